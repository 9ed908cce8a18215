package rungwise.clinic.forecast;

import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import rungwise.clinic.StillWanted;
import rungwise.clinic.day.OpenErections;
import rungwise.clinic.forecast.CourseForecast.Asked;
import rungwise.clinic.forecast.CourseForecast.CurvePoint;
import rungwise.clinic.forecast.CourseForecast.Moved;
import rungwise.clinic.forecast.CourseForecast.None;
import rungwise.clinic.forecast.CourseForecast.Whole;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.choice.ByRuleAndModel;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Dose;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.ForecastRange;
import rungwise.dosing.response.Prospect;
import rungwise.dosing.response.ResponseModel;
import rungwise.quantities.Volume;

/** Asks the response model about a course, for a reader. The posterior is computed once. */
public final class CourseForecasts {

  private static final int CURVE_POINTS = 40;
  private static final int MOST_MOVES = 30;
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.US);

  private static final String CERVICAL =
      "Spinal cord injury: one group holds every level. After a cervical injury useful doses are"
          + " lower than this population expects, so the chance of a long response is said too low."
          + " The start dose protects him, not this forecast.";

  private static final String NOT_OVER =
      "No forecast while it is not known how an erection ended: first its end, then the dose.";

  private final Populations populations;
  private final ZoneId zone;

  /**
   * Forecasts of a clinic.
   *
   * @param zone in which a report has its day
   */
  public CourseForecasts(Populations populations, ZoneId zone) {
    this.populations = populations;
    this.zone = zone;
  }

  /** The forecast for the course page; silent while it is not known how an erection ended. */
  public CourseForecast of(CourseState state) {
    if (isEndOpen(state)) {
      return new None(NOT_OVER);
    }
    Question question = state.question();
    if (!state.file().isSound()) {
      return new None("No forecast: what stands on record is not as it was written.");
    }
    Optional<SignedPopulation> population = populations.inUseFor(question.preparation().id());
    if (population.isEmpty()) {
      return new None(
          "No forecast: no population of the response model is signed for this preparation.");
    }
    return prospect(population.get(), question)
        .<CourseForecast>map(prospect -> asked(state, population.get(), prospect))
        .orElseGet(() -> none(population.get(), question));
  }

  private static None none(SignedPopulation population, Question question) {
    return new None(
        ResponseModel.notRead(question.history().injections())
            .map(
                one ->
                    "No forecast: the model does not read a response that is not usable and lasts"
                        + " more than an hour ("
                        + one.drawn()
                        + ", "
                        + one.responseWords()
                        + ").")
            .orElseGet(
                () ->
                    "No forecast: the population "
                        + population.key()
                        + " says nothing of men whose aetiology is "
                        + question.group().words()
                        + "."));
  }

  /** Everything that can be said; empty where there is no forecast. */
  public Optional<Whole> whole(CourseState state) {
    if (isEndOpen(state)) {
      return Optional.empty();
    }
    Question question = state.question();
    if (!state.file().isSound()) {
      return Optional.empty();
    }
    return populations
        .inUseFor(question.preparation().id())
        .flatMap(
            population ->
                prospect(population, question).map(prospect -> whole(state, population, prospect)));
  }

  private static boolean isEndOpen(CourseState state) {
    return OpenErections.first(state).isPresent();
  }

  private static Optional<Prospect> prospect(SignedPopulation population, Question question) {
    return new ByRuleAndModel(population.model()).prospect(question);
  }

  private static Asked asked(CourseState state, SignedPopulation population, Prospect prospect) {
    Question question = state.question();
    return new Asked(
        population.key(),
        population.document().origin(),
        question.group() == AetiologyGroup.SPINAL_CORD ? List.of(CERVICAL) : List.of(),
        first(CourseGuards.ask(question), GuardClass.HARD_STOP),
        limits(question.protocol().chances()),
        near(state, prospect),
        curve(question.ladder(), prospect));
  }

  private static String limits(Protocol.Chances chances) {
    return Stream.of(
            chances.of120Minutes().map(limit -> limit.value() + " in 1000 of 2 h or longer"),
            chances.of240Minutes().map(limit -> limit.value() + " in 1000 of 4 h or longer"))
        .flatMap(Optional::stream)
        .reduce((one, other) -> one + ", " + other)
        .map(words -> "The protocol allows a chance of " + words + ".")
        .orElse("");
  }

  /** The dose in force, or else what is proposed, or else what was injected last. */
  static Volume current(CourseState state) {
    Ladder ladder = state.question().ladder();
    return state
        .file()
        .signedDose()
        .map(written -> written.fact().volume())
        .or(() -> state.advice().decision().proposed())
        .or(() -> state.question().last().map(Injection::drawn))
        .flatMap(ladder::atOrBelow)
        .orElse(ladder.first());
  }

  private static List<ForecastLine> near(CourseState state, Prospect prospect) {
    Question question = state.question();
    Ladder ladder = question.ladder();
    Volume current = current(state);
    boolean isSigned = state.file().signedDose().isPresent();
    var lines = new ArrayList<ForecastLine>();
    ladder
        .below(current)
        .ifPresent(volume -> lines.add(line(question, prospect, volume, "one step below")));
    lines.add(line(question, prospect, current, isSigned ? "the signed dose" : "the step now"));
    ladder
        .above(current)
        .ifPresent(volume -> lines.add(line(question, prospect, volume, "one step above")));
    return lines;
  }

  private static ForecastLine line(
      Question question, Prospect prospect, Volume volume, String place) {
    StillWanted.orStop();
    Forecast forecast = prospect.forecast(volume);
    ForecastRange range = prospect.range(volume);
    List<Verdict> verdicts =
        Stream.concat(
                CourseGuards.ask(question).stream(), DoseGuards.ask(question, volume).stream())
            .toList();
    return new ForecastLine(
        new Dose(volume, question.preparation(), question.ladder().barrel()),
        place,
        happened(question, volume),
        Chance.of(forecast, range, Forecast::useful, RoundingMode.HALF_UP),
        Chance.of(forecast, range, Forecast::useful60, RoundingMode.CEILING),
        Chance.of(forecast, range, Forecast::useful120, RoundingMode.CEILING),
        Chance.of(forecast, range, Forecast::useful240, RoundingMode.CEILING),
        Math.round(prospect.medianMinutesIfUseful(volume)),
        first(verdicts, GuardClass.HARD_STOP),
        first(verdicts, GuardClass.HOLD),
        !ByRuleAndModel.isWithin(question.protocol().chances(), forecast));
  }

  /** What closes a volume, because it lasted or may have lasted. */
  private static Optional<String> happened(Question question, Volume volume) {
    return question
        .history()
        .closing(question.preparation(), volume)
        .map(one -> one.drawn() + ": " + one.responseWords());
  }

  private static Optional<String> first(List<Verdict> verdicts, GuardClass of) {
    return verdicts.stream()
        .filter(verdict -> verdict.rule().guardClass() == of)
        .map(verdict -> verdict.rule().wording())
        .findFirst();
  }

  private static List<CurvePoint> curve(Ladder ladder, Prospect prospect) {
    long most = ladder.ceiling().microlitres();
    return LongStream.rangeClosed(1, CURVE_POINTS)
        .map(point -> most * point / CURVE_POINTS)
        .filter(volume -> volume > 0)
        .distinct()
        .mapToObj(Volume::ofMicrolitres)
        .map(volume -> point(prospect, volume))
        .toList();
  }

  static CurvePoint point(Prospect prospect, Volume volume) {
    StillWanted.orStop();
    Forecast forecast = prospect.forecast(volume);
    ForecastRange range = prospect.range(volume);
    return new CurvePoint(
        volume,
        Chance.of(forecast, range, Forecast::useful, RoundingMode.HALF_UP),
        Chance.of(forecast, range, Forecast::useful120, RoundingMode.CEILING));
  }

  private Whole whole(CourseState state, SignedPopulation population, Prospect prospect) {
    Question question = state.question();
    Ladder ladder = question.ladder();
    Volume current = current(state);
    List<ForecastLine> all =
        ladder
            .barrel()
            .marking()
            .graduationVolume()
            .map(step -> marks(ladder, step))
            .orElse(ladder.rungs())
            .stream()
            .map(volume -> line(question, prospect, volume, ladder.hasRung(volume) ? "a step" : ""))
            .toList();
    List<Injection> reports = question.history().injections();
    int first = Math.max(0, reports.size() - MOST_MOVES);
    return new Whole(
        asked(state, population, prospect),
        all,
        current,
        moves(population, question, current, first),
        first,
        RestsOn.of(population, question, current));
  }

  private static List<Volume> marks(Ladder ladder, Volume step) {
    var marks = new ArrayList<Volume>();
    for (Volume at = step;
        ladder.barrel().hasMarkAt(at) && !at.isMoreThan(ladder.ceiling());
        at = at.plus(step)) {
      marks.add(at);
    }
    return marks;
  }

  private List<Moved> moves(
      SignedPopulation population, Question question, Volume volume, int first) {
    List<Injection> reports = question.history().injections();
    var moves = new ArrayList<Moved>();
    for (int known = first; known <= reports.size(); known++) {
      Optional<Injection> report =
          known == 0 ? Optional.empty() : Optional.of(reports.get(known - 1));
      population
          .model()
          .prospect(
              question.group(),
              question.preparation(),
              question.history(),
              reports.subList(0, known))
          .map(prospect -> point(prospect, volume))
          .ifPresent(
              point ->
                  moves.add(
                      new Moved(
                          report.map(this::day).orElse("before"),
                          report.map(one -> said(one, question)).orElse(""),
                          point.useful(),
                          point.useful120())));
    }
    return moves;
  }

  private String day(Injection report) {
    return DAY.format(LocalDate.ofInstant(report.at(), zone));
  }

  private static String said(Injection report, Question question) {
    boolean isOfThis = report.preparation().id().equals(question.preparationId());
    return report.drawn()
        + (isOfThis ? ", " : " of another preparation, ")
        + report.responseWords();
  }
}
