package rungwise.clinic.reaching;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.day.DayLine;
import rungwise.clinic.day.Need;
import rungwise.clinic.people.Role;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.reaching.ReachDraft.What;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.HowToReach;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** How a man is reached, over any store. New York is 5 hours behind UTC then. */
public abstract class ReachingContract {

  /** Ten in the morning in New York. */
  private static final Instant TEN = Instant.parse("2026-03-02T15:00:00Z");

  private TitrationWorld world;
  private Reaching reaching;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.setClock(TEN);
    reaching = new Reaching(world.ports());
  }

  private Reading<Long> write(ReachDraft draft) {
    return reaching.write(Staff.ON_CALL, course, draft);
  }

  private static ReachDraft number(String text, String from, String until) {
    return ReachDraft.number(text, "HIS", from, until, "NONE");
  }

  private void number(String text) {
    write(number(text, "", "")).orThrow();
  }

  private HowToReach how() {
    return HowToReach.of(world.file(course));
  }

  private String entry(int at) {
    return how().numbers().get(at).entry().id().text();
  }

  private CourseView view() {
    return new CourseViews(world.ports().time(), account -> "Ann").of(world.state(course));
  }

  private DayLine day() {
    return view().day();
  }

  private String wishes() {
    return String.join(" ", view().reach().numbers().getFirst().wishes());
  }

  @Test
  void a_number_is_kept_as_typed_and_hours_are_honoured_in_words() {
    write(number(" 07700 900123 ", "18:00", "")).orThrow();

    assertThat(how().numbers().getFirst().telephone().text()).isEqualTo("07700 900123");
    assertThat(view().reach().numbers().getFirst().link()).contains("tel:07700900123");
    assertThat(wishes())
        .isEqualTo("Only after 18:00: it is 10:00 there, so not now. Leave no message.");

    world.pass(Duration.ofHours(8));
    assertThat(wishes()).startsWith("Only after 18:00; it is 18:00 there.");
  }

  @Test
  void an_erection_that_is_not_over_overrides_the_hours_and_says_so() {
    world.signProposed(course);
    write(number("07700 900123", "18:00", "")).orThrow();
    world.told(course, ReportForm.at("2026-03-02", "09:00").atLeast("60")).orThrow();

    assertThat(wishes())
        .isEqualTo(
            "His hours are only after 18:00; an erection that is not known to be over overrides"
                + " them: call at any hour. Leave no message.");
    assertThat(view().open().orElseThrow().reach().numbers()).hasSize(1);

    write(ReachDraft.of(What.NOT_REACHED, entry(0))).orThrow();

    Instant due = NextTry.WHILE_NOT_OVER.value().after(world.now());
    assertThat(how().again().orElseThrow().due()).isEqualTo(due);
  }

  @Test
  void who_was_never_asked_is_spoken_to_alone() {
    assertThat(view().reach().wishes())
        .containsExactly(
            "Not asked what may be said to whom: until then speak with nobody but him.");

    write(ReachDraft.wishes("CALL_BACK", "PLAIN", "Farsi", "NEEDED")).orThrow();

    assertThat(view().reach().wishes())
        .containsExactly(
            "His partner may be asked that he calls back, and is told nothing else.",
            "Speaks Farsi: an interpreter is needed.",
            "Post only in a plain envelope, without the clinic's name.");
  }

  @Test
  void a_number_that_is_no_longer_his_stays_to_be_read_and_is_not_called() {
    number("07700 900123");
    number("07700 900456");

    write(ReachDraft.of(What.GONE, entry(0))).orThrow();

    assertThat(how().numbers())
        .extracting(one -> one.telephone().text())
        .containsExactly("07700 900456");
    assertThat(view().reach().gone())
        .singleElement()
        .asString()
        .startsWith("07700 900123: no longer his, written 10:00 by Ann");
    assertThat(world.file(course).entries())
        .extracting(one -> one.fact().toString())
        .anyMatch(fact -> fact.contains("07700 900123"));
  }

  @Test
  void a_changed_number_keeps_its_place() {
    number("07700 900123");
    number("07700 900456");
    String first = entry(0);

    write(
            new ReachDraft(
                number("", "", "").what(),
                first,
                "07700 900789",
                "AT_WORK",
                "09:00",
                "17:00",
                "CALL_BACK",
                "",
                "",
                "",
                "",
                ""))
        .orThrow();

    assertThat(how().numbers())
        .extracting(one -> one.telephone().text())
        .containsExactly("07700 900789", "07700 900456");
    assertThat(write(ReachDraft.of(What.NOT_REACHED, first)).placed())
        .extracting(Fault::field)
        .containsExactly(ReachDraft.ENTRY);
  }

  @Test
  void who_was_not_reached_stays_on_the_list_until_he_is_and_nothing_else_changes() {
    world.signProposed(course);
    number("07700 900123");
    DayLine before = day();

    write(ReachDraft.of(What.NOT_REACHED, entry(0))).orThrow();
    write(ReachDraft.of(What.NOT_REACHED, entry(0))).orThrow();

    assertThat(day().need()).isEqualTo(Need.CALL_AGAIN);
    assertThat(day().now()).isEqualTo(before.now());
    assertThat(day().since()).isEqualTo(Instant.parse("2026-03-02T19:00:00Z"));
    assertThat(view().reach().again())
        .contains("Not reached: 2 tries, the last at 10:00 by Ann. Next try due at 14:00, in 4 h.");

    world.pass(Duration.ofDays(3));
    assertThat(day().need()).isEqualTo(Need.CALL_AGAIN);

    write(ReachDraft.of(What.REACHED, entry(0))).orThrow();
    assertThat(day().need()).isEqualTo(before.need());
    assertThat(day().again()).isEmpty();
  }

  @Test
  void no_try_calms_an_emergency() {
    world.signProposed(course);
    number("07700 900123");
    world.told(course, ReportForm.at("2026-03-02", "05:00").atLeast("240")).orThrow();
    assertThat(day().need()).isEqualTo(Need.EMERGENCY);

    for (What what : List.of(What.NOT_REACHED, What.REACHED)) {
      CourseView before = view();
      write(ReachDraft.of(what, entry(0))).orThrow();

      assertThat(day().need()).isEqualTo(Need.EMERGENCY);
      assertThat(day().since()).isEqualTo(before.day().since());
      assertThat(view().blocks()).isEqualTo(before.blocks());
      assertThat(view().now()).isEqualTo(before.now());
      assertThat(view().open().orElseThrow().call()).isEqualTo(before.open().orElseThrow().call());
    }
  }

  /** A task of the prescriber stays his, and says beside it that nobody reached him. */
  @Test
  void a_try_hides_nothing_that_waits_for_somebody_else() {
    number("07700 900123");
    assertThat(day().need()).isEqualTo(Need.SIGNATURE);

    write(ReachDraft.of(What.NOT_REACHED, entry(0))).orThrow();

    assertThat(day().need()).isEqualTo(Need.SIGNATURE);
    assertThat(day().again()).isPresent();
    assertThat(Need.SIGNATURE.isTaskOf(Set.of(Role.PRESCRIBER))).isTrue();
  }

  @Test
  void all_faults_of_a_number_are_told_at_once_and_nothing_is_kept() {
    Reading<Long> refused = write(ReachDraft.number("call me", "nobody", "6:00", "never", "shout"));

    assertThat(refused.placed())
        .extracting(Fault::field)
        .containsExactly(
            ReachDraft.NUMBER,
            ReachDraft.WHOSE,
            ReachDraft.MESSAGE,
            ReachDraft.FROM,
            ReachDraft.UNTIL);
    assertThat(how().numbers()).isEmpty();
    assertThat(write(number("0".repeat(41), "", "")).faults().getFirst()).contains("at most 40");
    assertThat(write(number("07700\u200b900123", "", "")).faults().getFirst())
        .contains("nobody can see");
    assertThat(write(number("07700 900123", "18:00", "18:00")).placed())
        .extracting(Fault::field)
        .containsExactly(ReachDraft.UNTIL);
  }

  @Test
  void a_number_stands_once() {
    number("07700 900123");

    assertThat(write(number("07700 900123", "", "")).placed())
        .extracting(Fault::field)
        .containsExactly(ReachDraft.NUMBER);
  }

  @Test
  void who_treats_nobody_writes_nothing() {
    assertThat(reaching.write(Staff.LEAD, course, number("07700 900123", "", "")).found())
        .isEmpty();
  }
}
