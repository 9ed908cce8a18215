package rungwise.clinic.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.RoundingMode;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.clinic.StillWanted;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.course.Plan;
import rungwise.clinic.forecast.CourseForecast.Asked;
import rungwise.clinic.forecast.CourseForecast.None;
import rungwise.clinic.forecast.CourseForecast.Whole;
import rungwise.clinic.populations.InventedPopulations;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.ResponseModel;

/** What a reader is told of a course's volumes. */
final class CourseForecastsTest {

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final CourseForecasts forecasts =
      new CourseForecasts(world.populations(), ZoneOffset.UTC);

  private void sign(String document) {
    world
        .populations()
        .signBroughtIn(
            Staff.LEAD, "our-men", document, Set.of(SamplePreparations.ALPROSTADIL_20.id()))
        .orThrow();
  }

  private Asked asked(CourseId course) {
    return (Asked) forecasts.of(world.state(course));
  }

  private Whole whole(CourseId course) {
    return forecasts.whole(world.state(course)).orElseThrow();
  }

  private static List<String> volumes(List<ForecastLine> lines) {
    return lines.stream().map(line -> line.dose().volume().toString()).toList();
  }

  @Test
  void without_a_signed_population_there_is_no_forecast_and_it_says_why() {
    CourseId course = world.open();

    assertThat(forecasts.of(world.state(course)))
        .isEqualTo(
            new None(
                "No forecast: no population of the response model is signed for this"
                    + " preparation."));
    assertThat(forecasts.whole(world.state(course))).isEmpty();
  }

  @Test
  void a_group_that_the_population_does_not_know_has_no_forecast() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open("mixed", "u100-1");

    assertThat(((None) forecasts.of(world.state(course))).because())
        .isEqualTo(
            "No forecast: the population our-men version 1 says nothing of men whose aetiology is"
                + " mixed.");
  }

  @Test
  void while_it_is_not_known_how_an_erection_ended_nothing_is_forecast() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofHours(1));
    world.told(course, ReportForm.at("2026-03-02", "10:00").atLeast("54")).orThrow();

    assertThat(((None) forecasts.of(world.state(course))).because())
        .startsWith("No forecast while it is not known how an erection ended");
    assertThat(forecasts.whole(world.state(course))).isEmpty();

    EntryId first = world.state(course).file().reports().getFirst().entry().id();
    ReportForm ended = ReportForm.at("2026-03-02", "10:00").exactly("58");
    world.told(course, ended.correcting(first, "he called back: it went down")).orThrow();

    assertThat(asked(course).lines()).isNotEmpty();
    assertThat(whole(course).all()).isNotEmpty();
  }

  @Test
  void the_step_the_one_below_and_the_one_above_are_told() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open();
    assertThat(volumes(asked(course).lines())).containsExactly("0.12 mL", "0.25 mL");
    world.signProposed(course);
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("2").exactly("20"))
        .orThrow();
    world.signProposed(course);

    List<ForecastLine> lines = asked(course).lines();

    assertThat(volumes(lines)).containsExactly("0.12 mL", "0.25 mL", "0.5 mL");
    assertThat(lines.stream().map(ForecastLine::place))
        .containsExactly("one step below", "the signed dose", "one step above");
    assertThat(lines.get(1).closed()).isEmpty();
    assertThat(lines.get(2).closed()).as("two steps above what was injected").isPresent();
    assertThat(lines.get(2).words()).contains("0.5 mL (50-unit mark", " Closed: ", "4 h or longer");
  }

  @Test
  void every_chance_rises_with_the_volume_and_lies_in_its_order() {
    sign(InventedPopulations.WEAK);
    List<ForecastLine> all = whole(world.open()).all();

    assertThat(all).hasSizeGreaterThan(50);
    for (int i = 0; i < all.size(); i++) {
      ForecastLine line = all.get(i);
      assertThat(line.useful().middle()).isBetween(line.useful60().middle(), 1.0);
      assertThat(line.useful60().middle()).isGreaterThanOrEqualTo(line.useful120().middle());
      assertThat(line.useful120().middle()).isGreaterThanOrEqualTo(line.useful240().middle());
      assertThat(line.useful().low()).isLessThanOrEqualTo(line.useful().high());
      if (i > 0) {
        assertThat(line.useful120().middle()).isGreaterThan(all.get(i - 1).useful120().middle());
      }
    }
    assertThat(all.getFirst().closed()).as("too small to measure").isPresent();
    assertThat(all.getLast().closed()).as("more than one step up").isPresent();
  }

  @Test
  void a_volume_above_the_protocols_limit_says_so() {
    sign(InventedPopulations.STRONG);
    CourseId course = world.open();
    assertThat(asked(course).limits()).isEmpty();
    world.written().signWritten(Staff.LEAD, LabelReader.limitedTo(50), Set.of()).orThrow();
    var plan = new Plan(SamplePreparations.ALPROSTADIL_20.id(), "u100-1", "limited", 1);
    world.titration().choosePlan(Staff.PRESCRIBER, course, plan, world::isInUse, "").orThrow();

    assertThat(asked(course).limits())
        .isEqualTo("The protocol allows a chance of 50 in 1000 of 2 h or longer.");
    assertThat(asked(course).lines()).allMatch(ForecastLine::isBeyondLimit);
    assertThat(asked(course).lines().getFirst().words()).endsWith("Above the protocol's limit.");
  }

  @Test
  void after_a_spinal_cord_injury_the_unsafe_miss_is_said() {
    sign(InventedPopulations.WEAK);

    assertThat(asked(world.open("spinal_cord", "u100-1")).warnings())
        .singleElement()
        .asString()
        .contains("cervical injury", "said too low");
    assertThat(asked(world.open()).warnings()).isEmpty();
  }

  @Test
  void an_open_emergency_closes_every_volume_of_the_forecast() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open();
    world
        .report(course, ReportForm.at("2026-03-02", "04:00").mark("12").grade("3").exactly("250"))
        .orThrow();

    Asked asked = asked(course);

    assertThat(asked.forbidden()).isPresent();
    assertThat(asked.lines())
        .isNotEmpty()
        .allMatch(line -> line.closed().equals(asked.forbidden()));
    assertThat(asked.lines().getFirst().happened()).isPresent();
    assertThat(asked.lines().getFirst().words())
        .contains(". It has happened: 0.12 mL: ", ". By the model: usable response ");
  }

  @Test
  void a_long_response_that_was_not_usable_is_not_read_as_a_sign_that_he_needs_more() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open();
    world
        .report(course, ReportForm.at("2026-03-02", "04:00").mark("12").grade("2").exactly("200"))
        .orThrow();

    assertThat(forecasts.of(world.state(course)))
        .isInstanceOfSatisfying(
            None.class,
            none ->
                assertThat(none.because())
                    .startsWith("No forecast: the model does not read a response that is not"));
  }

  @Test
  void a_dose_that_is_not_known_to_have_gone_in_moves_no_chance() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open();
    List<ForecastLine> before = asked(course).lines();
    for (String day : List.of("2026-02-20", "2026-02-23", "2026-02-26")) {
      world
          .report(
              course,
              ReportForm.at(day, "09:00").mark("12").grade("0").exactly("5").causes("one_found"))
          .orThrow();
    }

    assertThat(asked(course).lines())
        .extracting(ForecastLine::useful120)
        .containsExactlyElementsOf(before.stream().map(ForecastLine::useful120).toList());
  }

  @Test
  void each_report_moves_the_forecast_and_a_poor_one_lowers_it() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open();
    world.signProposed(course);
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("0").exactly("5"))
        .orThrow();

    Whole whole = whole(course);

    assertThat(whole.moves()).hasSize(2);
    assertThat(whole.moves().get(0).label()).isEqualTo("before");
    assertThat(whole.moves().get(1).label()).isEqualTo("2 Mar");
    assertThat(whole.moves().get(1).report()).startsWith("0.12 mL, ");
    assertThat(whole.moves().get(1).useful().middle())
        .isLessThan(whole.moves().get(0).useful().middle());
    assertThat(whole.notShown()).isZero();
  }

  /** By the same model asked directly, with the one number changed by hand. */
  @Test
  void what_a_chance_rests_on_is_said_and_what_it_would_be_otherwise() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open();
    SignedPopulation signed =
        world.populations().inUseFor(SamplePreparations.ALPROSTADIL_20.id()).orElseThrow();
    Population said = signed.document().population();

    Whole whole = whole(course);
    RestsOn first = whole.rests().getFirst();
    Forecast apart =
        new ResponseModel(signed.key(), withTau(said, 0.5 * Math.exp(0.7)), signed.reference())
            .prospect(
                AetiologyGroup.VASCULOGENIC,
                SamplePreparations.ALPROSTADIL_20,
                world.state(course).question().history(),
                List.of())
            .orElseThrow()
            .forecast(whole.volume());

    assertThat(whole.rests())
        .extracting(RestsOn::assumed)
        .containsExactly(
            "how far the times of one man differ", "how steeply firmness rises with the dose");
    assertThat(first.useful120().high()).isCloseTo(apart.useful120(), within(1e-10));
    assertThat(first.useful120().low()).isLessThan(first.useful120().middle());
    assertThat(first.useful().low()).isCloseTo(first.useful().high(), within(1e-10));
  }

  private static Population withTau(Population said, double tau) {
    return new Population(
        said.mu(),
        said.gammas(),
        said.omega(),
        said.beta(),
        said.c2(),
        said.c4(),
        said.d0(),
        said.d1(),
        tau);
  }

  @ParameterizedTest
  @CsvSource({
    "0.6249, HALF_UP, 62 %",
    "0.0341, HALF_UP, 3.4 %",
    "0.03401, CEILING, 3.5 %",
    "0.101, CEILING, 11 %",
    "0.02, CEILING, 2 %",
    "0.0004, CEILING, below 0.1 %",
    "0.9999, HALF_UP, above 99.9 %"
  })
  void a_chance_is_told_in_percent_and_a_dangerous_one_is_rounded_up(
      double value, RoundingMode rounding, String words) {
    assertThat(new Chance(value, value, value, rounding).words()).isEqualTo(words);
    assertThat(new Chance(value, value, value, rounding).rangeWords()).isEqualTo(words);
  }

  @Test
  void a_range_names_its_unit_once() {
    assertThat(new Chance(0.5, 0.41, 0.8, RoundingMode.HALF_UP).rangeWords())
        .isEqualTo("41 to 80 %");
    assertThat(new Chance(0.01, 0.0001, 0.04, RoundingMode.CEILING).rangeWords())
        .isEqualTo("below 0.1 to 4 %");
  }

  private static int stepsUntilDone(int mostSteps, StillWanted.Reading<RuntimeException> reading) {
    var steps = new AtomicInteger();
    try {
      StillWanted.by(() -> steps.incrementAndGet() <= mostSteps, reading);
    } catch (StillWanted.NobodyWaits gone) {
      assertThat(steps).hasValue(mostSteps + 1);
    }
    return steps.get();
  }

  @Test
  void a_forecast_ends_at_the_next_volume_once_nobody_waits_for_it() {
    sign(InventedPopulations.WEAK);
    CourseId course = world.open();
    world.signProposed(course);
    CourseState state = world.state(course);

    int all = stepsUntilDone(Integer.MAX_VALUE - 1, () -> forecasts.whole(state));

    // 40 points of the curve, each mark up to the highest dose, and what each report moved.
    assertThat(all).isGreaterThan(50);
    for (int left : List.of(0, 1, 25, all - 1)) {
      assertThat(stepsUntilDone(left, () -> forecasts.whole(state))).isEqualTo(left + 1);
    }
    assertThat(stepsUntilDone(all, () -> forecasts.whole(state))).isEqualTo(all);
  }
}
