package rungwise.clinic.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.Patient;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.ManLines;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.clinic.today.ManWords;
import rungwise.quantities.Fault;

/** Correcting who a man is, over any store. */
public abstract class CorrectingContract {

  private static final String WHY = "his passport says so";
  private static final String GROUP = "vasculogenic";

  private TitrationWorld world;
  private Correcting correcting;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A man with a signed dose. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    correcting = new Correcting(world.ports());
  }

  private long basis() {
    return world.file(course).basis();
  }

  private static ManDraft man(String name, String number, String group) {
    return new ManDraft(name, "1961-04-30", number, group, /* namesakeConfirmed= */ false, WHY);
  }

  /** A form that was open while somebody else corrected the name would set the old one again. */
  @Test
  void what_was_corrected_meanwhile_is_read_first() {
    long shown = basis();
    correcting
        .correct(Staff.PRESCRIBER, course, shown, man("Ola Sample", "MR-77", GROUP))
        .orThrow();

    assertThat(
            correcting
                .correct(Staff.PRESCRIBER, course, shown, man("Old Name", "MR-77", GROUP))
                .found())
        .isEmpty();
    assertThat(world.file(course).patient().fullName()).isEqualTo("Ola Sample");
  }

  @Test
  void who_he_is_now_and_who_he_was_before_both_stay_and_the_signed_dose_too() {
    Patient before = world.file(course).patient();

    correcting
        .correct(Staff.PRESCRIBER, course, basis(), man("Ola Sample", "MR-77", GROUP))
        .orThrow();

    assertThat(world.file(course).patient())
        .isEqualTo(new Patient("Ola Sample", LocalDate.of(1961, 4, 30), "MR-77"));
    assertThat(ManLines.before(world.file(course)))
        .singleElement()
        .asString()
        .contains(before.fullName())
        .contains(before.recordNumber());
    assertThat(world.last(course).reason()).contains(WHY);
    assertThat(ManWords.of(world.file(course)))
        .containsAll(ManWords.of(before))
        .containsAll(ManWords.of(world.file(course).patient()));
    assertThat(world.file(course).signedDose()).isPresent();
    assertThat(world.stored().courses().all()).containsOnlyOnce(course);
  }

  @Test
  void the_warning_of_the_same_man_works_with_the_new_identity_and_with_the_old_one() {
    Patient before = world.file(course).patient();
    correcting
        .correct(Staff.PRESCRIBER, course, basis(), man("Ola Sample", "MR-77", GROUP))
        .orThrow();

    for (Patient one : new Patient[] {before, world.file(course).patient()}) {
      assertThat(world.stored().courses().alike(one)).containsExactly(course);
      assertThat(
              world
                  .starting()
                  .open(
                      Staff.EDUCATOR,
                      world.form(one.fullName(), one.recordNumber(), GROUP, "u100-1"))
                  .faults())
          .singleElement()
          .asString()
          .startsWith("Another course is for a man");
    }
  }

  @Test
  void who_would_be_like_another_man_is_confirmed_first() {
    CourseId other = world.open();
    String number = world.file(other).patient().recordNumber();

    assertThat(
            correcting
                .correct(Staff.PRESCRIBER, course, basis(), man("Ola Sample", number, GROUP))
                .placed())
        .extracting(Fault::field)
        .containsExactly(ManDraft.NAMESAKE);
    correcting
        .correct(
            Staff.PRESCRIBER,
            course,
            world.file(course).basis(),
            new ManDraft("Ola Sample", "1961-04-30", number, GROUP, true, WHY))
        .orThrow();
  }

  @Test
  void another_group_ends_the_signed_dose_whatever_is_corrected_after_it() {
    correcting
        .correct(Staff.PRESCRIBER, course, basis(), man("A", "MR-77", "spinal_cord"))
        .orThrow();
    assertThat(world.file(course).signedDose()).isEmpty();
    correcting
        .correct(Staff.PRESCRIBER, course, basis(), man("B", "MR-77", "spinal_cord"))
        .orThrow();
    assertThat(world.file(course).signedDose()).isEmpty();
    correcting.correct(Staff.PRESCRIBER, course, basis(), man("B", "MR-77", GROUP)).orThrow();
    assertThat(world.file(course).signedDose()).isEmpty();

    assertThat(world.titration().replays(world.file(course)))
        .isNotEmpty()
        .allSatisfy(replay -> assertThat(replay.differences()).isEmpty());
  }

  @Test
  void only_a_prescriber_corrects_it_and_everything_that_is_wrong_is_said_at_once() {
    assertThat(
            correcting.correct(Staff.EDUCATOR, course, basis(), man("A", "MR-77", GROUP)).found())
        .isEmpty();
    assertThat(
            correcting
                .correct(
                    Staff.PRESCRIBER,
                    course,
                    basis(),
                    new ManDraft("", "1961-02-30", "", "", false, " "))
                .placed())
        .extracting(Fault::field)
        .containsExactly(
            ManDraft.FULL_NAME,
            ManDraft.RECORD_NUMBER,
            ManDraft.BIRTH_DATE,
            ManDraft.GROUP,
            CourseChanges.REASON);
    Patient now = world.file(course).patient();
    assertThat(
            correcting
                .correct(
                    Staff.PRESCRIBER,
                    course,
                    basis(),
                    man(now.fullName(), now.recordNumber(), GROUP))
                .faults())
        .containsExactly("That is what stands on record already: nothing was changed.");
  }
}
