package rungwise.clinic.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.course.Moment;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.reaching.ReachDraft;
import rungwise.clinic.reaching.Reaching;
import rungwise.clinic.room.StartDraft;
import rungwise.clinic.room.VisitForms;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What is told of an erection of which nobody has said how it ended, and of one that is over. */
final class OpenErectionsTest {

  private static final long BEFORE_ALL_ENTRIES = 0;

  private final List<PastHistories.Kept> past = new ArrayList<>();
  private TitrationWorld world;
  private CourseId course;

  @BeforeEach
  void begin() {
    world = new TitrationWorld(InMemoryRecord.ports(new BroughtIn()), new LabelReader());
    course = world.open();
  }

  /** What was brought in, as it is read. */
  private final class BroughtIn implements PastHistories {

    @Override
    public List<Undone> undone(String recordKey) {
      return List.of();
    }

    @Override
    public List<Kept> of(String recordKey) {
      return past.stream().filter(one -> one.history().recordKey().equals(recordKey)).toList();
    }

    @Override
    public List<Kept> all() {
      return past;
    }

    @Override
    public void append(String importId, String source, PastHistory history, Instant at) {
      throw new AssertionError("nothing is written here");
    }

    @Override
    public int withdraw(String importId, Instant at, String reason) {
      throw new AssertionError("nothing is taken back here");
    }
  }

  private void bringIn(SoftAfter soft, Optional<PreparationId> named) {
    var injection =
        new PastInjection(
            2,
            1,
            Volume.ofMicrolitres(500),
            1,
            Optional.of(1.0),
            Grade.FULLY_FIRM,
            soft,
            Optional.empty(),
            named);
    var history = new PastHistory("MR-1", "vasculogenic", List.of(injection));
    past.add(new PastHistories.Kept(BEFORE_ALL_ENTRIES, world.now(), "1", history));
  }

  private static SoftAfter atLeast(long minutes) {
    return new SoftAfter.AtLeast(TimeSpan.ofMinutes(minutes));
  }

  private static SoftAfter after(long minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  private OpenErection open() {
    return OpenErections.first(world.state(course)).orElseThrow();
  }

  private CourseViews views() {
    return new CourseViews(world.room().time(), account -> "somebody");
  }

  private DayLine line() {
    return views().dayOf(world.state(course)).day();
  }

  @Test
  void four_hours_in_the_room_say_what_was_injected_and_when_he_was_seen_last() {
    var forms = new VisitForms(world);
    world.signProposed(course);
    Instant injected = world.now();
    world.room().start(Staff.EDUCATOR, course, forms.start("12")).orThrow();
    EntryId observation = world.lastEntry(course);
    world.pass(Duration.ofMinutes(10));
    world
        .room()
        .note(Staff.EDUCATOR, course, observation, forms.note(Moment.FIRST_FIRM, "2"))
        .orThrow();
    world.pass(Duration.ofMinutes(50));
    Instant seen = world.now();
    world
        .room()
        .note(Staff.EDUCATOR, course, observation, forms.note(Moment.CHECKED, "3"))
        .orThrow();

    world.pass(Duration.ofHours(3).minusMillis(124));
    assertThat(OpenErections.of(world.state(course))).isEmpty();
    world.pass(Duration.ofMillis(124));

    assertThat(open().preparation()).contains(SamplePreparations.ALPROSTADIL_20);
    assertThat(open().drawn()).contains(Volume.ofMicrolitres(120));
    assertThat(open().firmAt()).contains(seen.minusMillis(123));
    assertThat(open().injectedAt()).contains(injected.minusMillis(123));
  }

  /** He got it all the same; what it was, the label says, and nobody has looked at it yet. */
  @Test
  void what_was_injected_from_another_vial_is_not_said_to_be_the_planned_one() {
    var forms = new VisitForms(world);
    world.signProposed(course);
    EntryId other = world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_40));
    world
        .room()
        .start(Staff.EDUCATOR, course, forms.alreadyGiven("12").from(other.text()))
        .orThrow();
    world.pass(Duration.ofHours(4));

    assertThat(open().preparation()).isEmpty();
    assertThat(open().drawn()).contains(Volume.ofMicrolitres(120));
  }

  /** No preparation of this clinic has that label. */
  @Test
  void what_was_injected_from_a_vial_of_no_known_composition_is_not_said_to_be_the_planned_one() {
    var forms = new VisitForms(world);
    world.signProposed(course);
    EntryId other =
        world.receive(
            course,
            VialForm.of(SamplePreparations.ALPROSTADIL_20).strength(Component.ALPROSTADIL, "33"));
    world
        .room()
        .start(Staff.EDUCATOR, course, forms.alreadyGiven("12").from(other.text()))
        .orThrow();
    world.pass(Duration.ofHours(4));

    assertThat(open().preparation()).isEmpty();
  }

  @Test
  void what_was_injected_from_nobody_knows_which_vial_is_of_the_plan_of_its_day_alone() {
    course = world.openUnprepared("vasculogenic", "u100-1");
    var given = new VisitForms(world).alreadyGiven("12").from(StartDraft.VIAL_NOT_KNOWN);
    world.room().start(Staff.EDUCATOR, course, given).orThrow();
    world.pass(Duration.ofHours(4));
    assertThat(open().preparation()).contains(SamplePreparations.ALPROSTADIL_20);

    world.choosePreparation(course, SamplePreparations.THREE_DRUG).orThrow();
    assertThat(open().preparation()).isEmpty();
  }

  @Test
  void what_was_injected_of_an_earlier_plan_is_not_said_to_be_of_the_present_one() {
    var forms = new VisitForms(world);
    world.signProposed(course);
    world.room().start(Staff.EDUCATOR, course, forms.start("12")).orThrow();
    world.choosePreparation(course, SamplePreparations.THREE_DRUG).orThrow();
    world.pass(Duration.ofHours(4));

    assertThat(open().preparation()).isEmpty();
  }

  private ReportForm firm() {
    return ReportForm.at("2026-03-02", "10:00").atLeast("54");
  }

  private EntryId firmAfter54Minutes() {
    world.signProposed(course);
    world.pass(Duration.ofMinutes(54));
    world.told(course, firm().place("home")).orThrow();
    return world.lastEntry(course);
  }

  @Test
  void a_report_that_counts_is_the_way_to_write_its_end() {
    EntryId report = firmAfter54Minutes();

    assertThat(open().isWithdrawn()).isFalse();
    assertThat(open().where()).isEqualTo(OpenErection.Where.AT_HOME);
    assertThat(open().way()).isEqualTo(new OpenErection.Way.Correct(report));
    assertThat(open().injectedAt()).contains(TitrationWorld.START.minusMillis(123));
    assertThat(open().firmAt())
        .contains(TitrationWorld.START.minusMillis(123).plus(Duration.ofMinutes(54)));
    assertThat(line().need()).isEqualTo(Need.FIRM);
  }

  @Test
  void a_report_that_was_withdrawn_leaves_an_end_that_nobody_knows() {
    EntryId report = firmAfter54Minutes();
    world.titration().withdraw(Staff.EDUCATOR, course, report, "another man").orThrow();

    assertThat(open().isWithdrawn()).isTrue();
    assertThat(open().way()).isEqualTo(new OpenErection.Way.Review());
    assertThat(line().need()).isEqualTo(Need.END_NOT_KNOWN);
  }

  @Test
  void a_correction_without_an_end_leaves_one_open_erection_and_one_with_an_end_none() {
    EntryId report = firmAfter54Minutes();
    world
        .report(course, firm().place("home").atLeast("50").correcting(report, "he looked again"))
        .orThrow();
    EntryId corrected = world.lastEntry(course);

    assertThat(OpenErections.of(world.state(course)))
        .isNotEmpty()
        .allMatch(one -> one.way().equals(new OpenErection.Way.Correct(corrected)));

    world.pass(Duration.ofHours(3));
    world
        .report(course, firm().place("home").exactly("70").correcting(corrected, "he called"))
        .orThrow();
    assertThat(OpenErections.of(world.state(course))).isEmpty();
  }

  /**
   * He was said to be firm for 4 hours; now he was injected an hour ago, which nobody who may
   * prescribe has looked at.
   */
  @Test
  void four_hours_that_were_said_make_it_an_emergency_whatever_stands_in_their_place() {
    world.signProposed(course);
    world.pass(Duration.ofHours(5));
    world.told(course, firm().place("home").atLeast("240")).orThrow();
    EntryId report = world.lastEntry(course);
    assertThat(OpenErections.over(world.state(course))).isEmpty();

    world
        .report(
            course,
            ReportForm.at("2026-03-02", "14:00")
                .place("home")
                .atLeast("54")
                .correcting(report, "he looked at the clock again"))
        .orThrow();
    EntryId corrected = world.lastEntry(course);
    assertThat(OpenErections.of(world.state(course)))
        .isNotEmpty()
        .allMatch(OpenErection::isSaid)
        .allMatch(one -> one.way().equals(new OpenErection.Way.Correct(corrected)));
    assertThat(OpenErections.over(world.state(course))).isEmpty();
    assertThat(line().need()).isEqualTo(Need.EMERGENCY);
    assertThat(views().of(world.state(course)).open().orElseThrow().fourHours())
        .isEqualTo("Not known how it ended; 4 hours or more were said of it.");

    world
        .report(
            course,
            ReportForm.at("2026-03-02", "14:00")
                .place("home")
                .exactly("58")
                .correcting(corrected, "he called"))
        .orThrow();
    assertThat(OpenErections.of(world.state(course))).isEmpty();
    assertThat(OpenErections.over(world.state(course))).isNotEmpty();
    assertThat(line().need()).isEqualTo(Need.EMERGENCY_OVER);
  }

  @Test
  void what_has_no_date_is_open_without_one() {
    bringIn(atLeast(200), Optional.of(SamplePreparations.ALPROSTADIL_20.id()));

    assertThat(open().injectedAt()).isEmpty();
    assertThat(open().firmAt()).isEmpty();
    assertThat(open().isWithdrawn()).isFalse();
    assertThat(open().way()).isEqualTo(new OpenErection.Way.Review());
    assertThat(line().need()).isEqualTo(Need.EMERGENCY);
  }

  @Test
  void of_what_nobody_knows_an_end_that_is_known_waits_and_one_that_is_not_is_open() {
    bringIn(after(300), Optional.empty());
    world
        .lifting()
        .reviewPast(Staff.PRESCRIBER, course, Optional.empty(), world::isInUse, "clinic closed")
        .orThrow();

    assertThat(OpenErections.of(world.state(course))).isEmpty();
    assertThat(OpenErections.over(world.state(course))).containsExactly(past.getFirst().at());
    assertThat(line().need()).isEqualTo(Need.EMERGENCY_OVER);

    bringIn(atLeast(250), Optional.empty());
    assertThat(OpenErections.of(world.state(course)))
        .singleElement()
        .matches(OpenErection::isSaid)
        .matches(one -> one.injectedAt().isEmpty());
    assertThat(OpenErections.over(world.state(course))).hasSize(1);
    assertThat(line().need()).isEqualTo(Need.EMERGENCY);
  }

  private void injectedAndSaid(String grade) {
    world.signProposed(course);
    ReportForm said = ReportForm.at("2026-03-02", "10:00").grade(grade).exactly("40");
    world.pass(Duration.ofDays(2));
    world.report(course, said).orThrow();
  }

  @Test
  void a_dose_above_the_signed_one_is_to_sign_and_the_same_one_is_not() {
    injectedAndSaid("1");
    assertThat(line().need()).isEqualTo(Need.SIGNATURE);

    course = world.open();
    world.setClock(TitrationWorld.START);
    injectedAndSaid("4");
    assertThat(line().need()).isEqualTo(Need.NOTHING);
  }

  /** How he is reached is no part of his treatment, and a number is no news of it. */
  @Test
  void he_waits_since_the_last_thing_that_was_written_of_his_treatment() {
    injectedAndSaid("1");
    Instant written = world.now();
    world.pass(Duration.ofHours(5));
    new Reaching(world.ports())
        .write(Staff.EDUCATOR, course, ReachDraft.number("07700 900123", "HIS", "", "", "NONE"))
        .orThrow();

    assertThat(line().since()).isEqualTo(written);
  }
}
