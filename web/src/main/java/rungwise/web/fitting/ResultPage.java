package rungwise.web.fitting;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.fitting.DoubtWords;
import rungwise.clinic.fitting.FitResult;
import rungwise.clinic.forecast.ForecastMove;
import rungwise.clinic.populations.PopulationChange;
import rungwise.clinic.populations.PopulationSheet;
import rungwise.clinic.populations.PopulationWords;
import rungwise.clinic.populations.Populations;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.HeldField;
import rungwise.web.populations.SignFor;

/**
 * A fit that has come to its end, as it is looked at before it is signed.
 *
 * @param held which fit it is, sent along unseen
 * @param doubts what speaks against signing it; where there is one, it cannot be signed
 * @param words what it expects; empty where no duration is known
 * @param groupsWithout the groups of which it says nothing
 * @param draws what the posterior rests on; empty where there is none
 * @param unlike the men whom it fits worst
 * @param change what it says otherwise than the population in use; empty where there is none
 * @param preparations those that it may be signed for; empty where it is not offered
 */
public record ResultPage(
    Faults faults,
    List<HeldField> held,
    String chosen,
    String reference,
    String referenceGroup,
    List<String> doubts,
    Optional<PopulationWords> words,
    List<String> groupsWithout,
    List<ParameterLine> parameters,
    String draws,
    Optional<ReportPictures> pictures,
    List<UnlikeMan> unlike,
    Optional<PopulationChange> change,
    List<Move> moves,
    Field name,
    List<Choice> preparations)
    implements NamesCourses {

  private static final String FIT = "fit";

  /**
   * How the forecast of one man would move.
   *
   * @param usefulNow empty where there is no forecast, as the other three
   */
  public record Move(
      CourseId course,
      String man,
      String recordNumber,
      String dose,
      String usefulNow,
      String usefulThen,
      String longNow,
      String longThen) {

    private static final String NONE = "no forecast";

    static Move of(ForecastMove move) {
      return new Move(
          move.course(),
          move.man().fullName(),
          move.man().recordNumber(),
          move.dose().volumeAndMark(),
          move.now().map(one -> one.useful().words()).orElse(NONE),
          move.then().map(one -> one.useful().words()).orElse(NONE),
          move.now().map(one -> one.useful120().words()).orElse(NONE),
          move.then().map(one -> one.useful120().words()).orElse(NONE));
    }

    public String path() {
      return "/courses/" + course;
    }
  }

  /**
   * What a fit is set beside.
   *
   * @param sheet empty where it is not offered
   * @param change empty where no population in use can be compared
   */
  record Beside(
      Optional<PopulationSheet> sheet,
      Optional<PopulationChange> change,
      List<ForecastMove> moves) {
    Beside {
      moves = List.copyOf(moves);
    }
  }

  public ResultPage {
    held = List.copyOf(held);
    doubts = List.copyOf(doubts);
    groupsWithout = List.copyOf(groupsWithout);
    parameters = List.copyOf(parameters);
    unlike = List.copyOf(unlike);
    moves = List.copyOf(moves);
    preparations = List.copyOf(preparations);
  }

  static ResultPage of(FitResult result, String fingerprint, Beside beside) {
    return new ResultPage(
        Faults.NONE,
        List.of(new HeldField(FIT, fingerprint)),
        result.chosen().words(),
        result.chosen().reference().composition(),
        ParameterLine.group(result.fit().reference()),
        result.doubts().stream().map(DoubtWords::of).toList(),
        result.fit().population().map(PopulationWords::of),
        result.groupsWithout().stream().map(AetiologyGroup::words).toList(),
        ParameterLine.of(result),
        result.posterior().map(ResultPage::draws).orElse(""),
        result.predicted().flatMap(ReportPictures::of),
        UnlikeMan.of(result),
        beside.change(),
        beside.moves().stream().map(Move::of).toList(),
        Field.of(Field.Kind.TEXT, Populations.NAME_FIELD, "What it is called here")
            .withHint("Small letters, digits and hyphens, such as our-men-2026."),
        beside.sheet().map(SignFor::choice).orElse(List.of()));
  }

  private static String draws(Posterior posterior) {
    return posterior.draws().count()
        + " weighed draws, worth at least "
        + ParameterLine.decimal(posterior.leastEffective(), 0)
        + " independent ones. Pareto k "
        + ParameterLine.decimal(posterior.paretoK(), 2)
        + "; up to "
        + Posterior.MOST_PARETO_K
        + " they can be trusted.";
  }

  ResultPage with(String called, Set<String> picked, Faults all) {
    return new ResultPage(
        all,
        held,
        chosen,
        reference,
        referenceGroup,
        doubts,
        words,
        groupsWithout,
        parameters,
        draws,
        pictures,
        unlike,
        change,
        moves,
        name.withValue(called).withFaults(all),
        preparations.stream().map(one -> one.withPicked(picked).withFaults(all)).toList());
  }

  @Override
  public List<CourseId> namedCourses() {
    return Stream.concat(
            unlike.stream().flatMap(man -> man.course().stream()), moves.stream().map(Move::course))
        .distinct()
        .toList();
  }
}
