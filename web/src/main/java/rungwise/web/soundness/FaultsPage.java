package rungwise.web.soundness;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.standing.Acknowledging;
import rungwise.clinic.standing.CourseChanges;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/** What is not as it was written as shown: by record number, without a name. */
public record FaultsPage(List<Way> shared, int unreadable, List<Course> courses, String notice)
    implements NamesCourses {

  /** As much of what was read as two people need to see that they speak of the same. */
  private static final int SHORT = 8;

  /**
   * A course.
   *
   * @param shown what is compared when the form is sent
   * @param given who has acknowledged it, and when
   * @param reason the field of the form; empty where only a sound record that is put back helps
   */
  public record Course(
      CourseId id,
      String recordNumber,
      List<String> faults,
      String shown,
      List<String> given,
      Optional<Field> reason,
      Faults refused) {

    public Course {
      faults = List.copyOf(faults);
      given = List.copyOf(given);
    }

    public String path() {
      return "/record-faults/" + id;
    }
  }

  public FaultsPage {
    shared = List.copyOf(shared);
    courses = List.copyOf(courses);
  }

  /** A form that was refused, to be shown again. */
  record Sent(CourseId course, String reason, Faults faults) {}

  static FaultsPage of(
      List<Way> shared,
      int unreadable,
      List<CourseFile> files,
      Function<AccountId, String> names,
      ClinicTime time,
      Optional<Sent> sent,
      String notice) {
    return new FaultsPage(
        shared,
        unreadable,
        files.stream()
            .map(
                file ->
                    course(file, names, time, sent.filter(one -> one.course().equals(file.id()))))
            .toList(),
        notice);
  }

  /** Whether nothing is known to be wrong. */
  public boolean isSound() {
    return shared.isEmpty() && unreadable == 0 && courses.isEmpty();
  }

  private static Course course(
      CourseFile file, Function<AccountId, String> names, ClinicTime time, Optional<Sent> sent) {
    Faults faults = sent.map(Sent::faults).orElse(Faults.NONE);
    return new Course(
        file.id(),
        file.patient().recordNumber(),
        file.flaws().stream().map(FaultsPage::words).toList(),
        Acknowledging.shown(file),
        Acknowledging.given(file).stream()
            .map(entry -> words(entry, names, time))
            .distinct()
            .toList(),
        Acknowledging.canBeAcknowledged(file)
            ? Optional.of(reason(sent.map(Sent::reason).orElse(""), faults))
            : Optional.empty(),
        faults);
  }

  private static Field reason(String typed, Faults faults) {
    return Field.of(Field.Kind.TEXT, CourseChanges.REASON, "Why no sound record can be put back")
        .withHint("It stays on record, such as: the last backup has the same fault.")
        .withValue(typed)
        .withFaults(faults);
  }

  private static String words(Flaw flaw) {
    return flaw.words()
        + (flaw.read().isEmpty() ? "" : " (as read: " + flaw.read().substring(0, SHORT) + ")");
  }

  private static String words(
      CourseEntry entry, Function<AccountId, String> names, ClinicTime time) {
    return names.apply(entry.recordedBy()) + ", " + time.words(entry.recordedAt());
  }

  @Override
  public List<CourseId> namedCourses() {
    return courses.stream().map(Course::id).toList();
  }
}
