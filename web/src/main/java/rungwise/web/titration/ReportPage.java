package rungwise.web.titration;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.Patient;
import rungwise.clinic.titration.CourseState;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Marking;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The report form.
 *
 * @param path where it is sent
 * @param correction the entry that is corrected, if one is
 */
public record ReportPage(
    String path,
    String coursePath,
    String man,
    String identifiers,
    String syringe,
    Optional<String> correction,
    Faults faults,
    Field date,
    Field time,
    Choice occurrence,
    Field mark,
    Choice grade,
    Choice soft,
    Field exactMinutes,
    Field leastMinutes,
    Field fromMinutes,
    Field beforeMinutes,
    Choice causes,
    Field reason) {

  static ReportPage of(CourseState state, ReportForm form, Optional<String> entry) {
    String course = "/courses/" + state.file().id();
    Patient patient = state.file().patient();
    Barrel barrel = state.question().ladder().barrel();
    return new ReportPage(
        course + "/report" + entry.map(one -> "/" + one).orElse(""),
        course,
        patient.fullName(),
        "born " + ClinicTime.words(patient.birthDate()) + ", record " + patient.recordNumber(),
        barrel.words(),
        entry,
        Faults.NONE,
        field(Field.Kind.DATE, "date", "Date of the injection", form.date()),
        field(Field.Kind.TEXT, "time", "Time of day, hours and minutes", form.time())
            .withHint("24-hour clock, such as 21:30"),
        occurrence(form),
        mark(barrel, form),
        grade(form),
        soft(form),
        minutes("exactMinutes", "Minutes after the injection", form.exactMinutes()),
        minutes("leastMinutes", "Minutes after the injection when last seen", form.leastMinutes()),
        minutes("fromMinutes", "Not before, in minutes after the injection", form.fromMinutes())
            .withHint("0 is allowed"),
        minutes("beforeMinutes", "But before, in minutes", form.beforeMinutes())
            .withHint("This minute itself is left out: before 120 means less than 2 hours"),
        causes(form),
        field(Field.Kind.TEXT, "reason", "Why it is corrected", form.reason()));
  }

  ReportPage withFaults(List<String> found) {
    Faults all = new Faults(found.stream().map(Fault::ofForm).toList());
    return new ReportPage(
        path,
        coursePath,
        man,
        identifiers,
        syringe,
        correction,
        all,
        date,
        time,
        occurrence,
        mark,
        grade,
        soft,
        exactMinutes,
        leastMinutes,
        fromMinutes,
        beforeMinutes,
        causes,
        reason);
  }

  private static Field field(Field.Kind kind, String name, String label, @Nullable String value) {
    return Field.of(kind, name, label).withValue(ReportForm.said(value));
  }

  private static Field minutes(String name, String label, @Nullable String value) {
    return field(Field.Kind.AMOUNT, name, label, value).optional();
  }

  private static Field mark(Barrel barrel, ReportForm form) {
    boolean isUnits = barrel.marking() instanceof Marking.UnitLines;
    String label =
        isUnits ? "Line to which he really drew the stopper" : "Volume he really drew, in mL";
    return field(Field.Kind.AMOUNT, "mark", label, form.mark())
        .withHint("On the " + barrel.words() + ", such as " + (isUnits ? "25" : "0.25"));
  }

  private static Choice occurrence(ReportForm form) {
    return Choice.of(
            "occurrence",
            "Only in the hour that came twice",
            List.of(
                new Option("", "does not matter", "", false),
                new Option("FIRST", "the first one, before the clocks went back", "", false),
                new Option("SECOND", "the second one, after the clocks went back", "", false)))
        .withPicked(Set.of(ReportForm.said(form.occurrence())));
  }

  private static Choice grade(ReportForm form) {
    List<Option> options =
        Arrays.stream(Grade.values())
            .map(
                grade ->
                    new Option(
                        Integer.toString(grade.number()),
                        grade.number() + ", " + grade.words(),
                        "",
                        false))
            .toList();
    return Choice.of("grade", "How firm it was", options)
        .withPicked(Set.of(ReportForm.said(form.grade())));
  }

  private static Choice soft(ReportForm form) {
    return Choice.of(
            "soft",
            "When it was fully soft again",
            List.of(
                new Option("exactly", "at a time that is known", "", false),
                new Option("between", "between two times", "", false),
                new Option(
                    "at_least",
                    "still firm when last seen, end not known",
                    "Read as without limit until somebody has asked how it ended.",
                    false),
                new Option("not_known", "not known", "", false)))
        .withPicked(Set.of(ReportForm.said(form.soft())));
  }

  private static Choice causes(ReportForm form) {
    List<Option> options =
        Arrays.stream(SimpleCauses.values())
            .map(
                cause ->
                    new Option(cause.name().toLowerCase(Locale.ROOT), cause.words(), "", false))
            .toList();
    return Choice.of("causes", "Anything wrong with the injection?", options)
        .withHint(
            "Whole dose delivered, no leak, needle not bent, not under the skin, no bubble,"
                + " aroused,"
                + " vial cold and in date.")
        .withPicked(Set.of(ReportForm.said(form.causes())));
  }
}
