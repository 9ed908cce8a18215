package rungwise.web.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Patient;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.history.Place;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The report form.
 *
 * @param path where it is sent
 * @param correction the entry that is corrected, if one is
 * @param syringe the syringe whose line is asked for
 * @param isOtherSyringe whether that is another one than the plan's
 * @param occurrence asked only where the time of day came twice
 */
public record ReportPage(
    String path,
    String coursePath,
    Who who,
    Optional<String> correction,
    Faults faults,
    Choice identified,
    Field date,
    Field time,
    Optional<Choice> occurrence,
    Field mark,
    String syringe,
    Choice barrel,
    boolean isOtherSyringe,
    Choice grade,
    Soft soft,
    Choice causes,
    More more,
    Field reason)
    implements NamesCourses {

  /**
   * Whose report it is.
   *
   * @param namesakes other men who could be taken for him
   */
  public record Who(
      String fullName, String birthDate, String recordNumber, List<Namesake> namesakes) {
    public Who {
      namesakes = List.copyOf(namesakes);
    }
  }

  /** Another man with a course who could be taken for this one. */
  public record Namesake(CourseId course, String words) {}

  /** When it was soft again. */
  public record Soft(Choice choice, Field exact, Field least, Field from, Field before) {}

  /**
   * What is folded away.
   *
   * @param vial asked only where he has one
   */
  public record More(
      boolean isOpen,
      Field onset,
      Field usable,
      Choice side,
      Choice hour,
      Field pain,
      Choice bruise,
      Choice aroused,
      Choice wrong,
      Optional<Choice> vial,
      Field otherTablets,
      Choice secondDose,
      Choice place) {}

  /** What surrounds the form: the course, the syringes of the clinic, the men who are alike. */
  record Around(CourseState state, List<Barrel> barrels, List<CourseFile> alike, ClinicTime time) {}

  static ReportPage of(Around around, ReportForm form, Optional<String> entry, Faults faults) {
    CourseState state = around.state();
    String course = "/courses/" + state.file().id();
    Barrel planned = state.question().ladder().barrel();
    Barrel used = Barrels.of(form.text("barrel")).orElse(planned);
    var ask = new InjectionQuestions("", form.typed(), faults);
    return new ReportPage(
        course + "/report" + entry.map(one -> "/" + one).orElse(""),
        course,
        who(state.file().patient(), entry.isPresent() ? List.of() : around.alike()),
        entry,
        faults,
        ask.choice(
            "identified",
            "Is it he?",
            List.of(
                new Option(
                    ReportForm.YES,
                    "He said his birth date and record number himself",
                    "Ask; do not read them out to him.",
                    false))),
        ask.field(Field.Kind.DATE, "date", "Date of the injection"),
        ask.field(Field.Kind.TEXT, "time", "Time of day, hours and minutes")
            .withHint("24-hour clock, such as 21:30"),
        ask.occurrence(around.time()),
        ask.mark(used),
        used.words(),
        barrel(ask, around.barrels(), planned, used),
        !used.equals(planned),
        ask.grade("How firm it was"),
        soft(ask),
        ask.causes(),
        more(ask, form, state.file()),
        ask.field(Field.Kind.TEXT, "reason", "Why it is corrected"));
  }

  @Override
  public List<CourseId> namedCourses() {
    return who.namesakes().stream().map(Namesake::course).toList();
  }

  private static Who who(Patient patient, List<CourseFile> alike) {
    return new Who(
        patient.fullName(),
        ClinicTime.words(patient.birthDate()),
        patient.recordNumber(),
        alike.stream().map(file -> namesake(patient, file)).toList());
  }

  private static Namesake namesake(Patient patient, CourseFile other) {
    Patient man = other.patient();
    String what =
        man.nameKey().equals(patient.nameKey())
            ? "Another man has this name: born "
            : "Another man could be taken for him: " + man.fullName() + ", born ";
    return new Namesake(
        other.id(),
        what + ClinicTime.words(man.birthDate()) + ", record " + man.recordNumber() + ".");
  }

  private static Choice barrel(
      InjectionQuestions ask, List<Barrel> kept, Barrel planned, Barrel used) {
    List<Option> options =
        Stream.concat(Stream.of(planned, used), kept.stream())
            .distinct()
            .map(
                one ->
                    new Option(
                        one.token(),
                        one.words() + (one.equals(planned) ? ", as planned" : ""),
                        "",
                        false))
            .toList();
    return ask.choice("barrel", "Syringe that he used", options)
        .withHint("The line above is then read on this syringe: ask for it again.");
  }

  private static Soft soft(InjectionQuestions ask) {
    return new Soft(
        ask.choice("soft", "When it was fully soft again", softOptions()),
        minutes(ask, "exactMinutes", "Minutes after the injection"),
        minutes(ask, "leastMinutes", "Minutes after the injection when last seen"),
        minutes(ask, "fromMinutes", "Not before, in minutes after the injection")
            .withHint("0 is allowed"),
        minutes(ask, "beforeMinutes", "But before, in minutes")
            .withHint("This minute itself is left out: before 120 means less than 2 hours"));
  }

  private static List<Option> softOptions() {
    return List.of(
        option(ReportForm.WITHIN_2_HOURS, "within 2 hours", ""),
        option(ReportForm.WITHIN_4_HOURS, "not within 2, but within 4 hours", ""),
        option(
            ReportForm.NOT_WITHIN_4_HOURS,
            "not within 4 hours: emergency",
            "If it still lasts, he goes to the emergency department at once."),
        option(ReportForm.EXACTLY, "at a time that is known", ""),
        option(ReportForm.BETWEEN, "between two times", ""),
        option(
            ReportForm.AT_LEAST,
            "still firm when last seen, end not known",
            "Read as without limit until somebody has asked how it ended."),
        option(ReportForm.NOT_KNOWN, "not known", ""));
  }

  private static Option option(String value, String label, String hint) {
    return new Option(value, label, hint, false);
  }

  private static Field minutes(InjectionQuestions ask, String name, String label) {
    return ask.optional(Field.Kind.AMOUNT, name, label);
  }

  private static More more(InjectionQuestions ask, ReportForm form, CourseFile file) {
    return new More(
        form.hasDetails(),
        minutes(ask, "onset", "First firm, minutes after the injection"),
        minutes(ask, "usable", "Usable for, in minutes"),
        ask.side(),
        ask.hour(),
        ask.pain(),
        answer(ask, "bruise", "A bruise?"),
        answer(ask, "aroused", "Was he aroused?"),
        ask.wrong(),
        vial(ask, file),
        ask.optional(Field.Kind.TEXT, "otherTablets", "Other tablets or drugs that day"),
        answer(ask, "secondDose", "A second dose that day?"),
        place(ask));
  }

  private static Choice answer(InjectionQuestions ask, String name, String label) {
    Choice choice =
        ask.choice(
            name,
            label,
            Arrays.stream(Answer.values())
                .map(answer -> option(answer.words(), answer.words(), ""))
                .toList());
    return ask.text(name).isEmpty() ? choice.withPicked(Set.of(Answer.NOT_KNOWN.words())) : choice;
  }

  private static Optional<Choice> vial(InjectionQuestions ask, CourseFile file) {
    if (file.vials().isEmpty()) {
      return Optional.empty();
    }
    var options = new ArrayList<Option>();
    options.add(option("", "not known", ""));
    file.vials()
        .forEach(
            vial ->
                options.add(
                    option(
                        vial.entry().id().text(),
                        "lot " + vial.fact().vial().lot() + ", " + vial.fact().vial().composition(),
                        "")));
    return Optional.of(ask.choice("vial", "Vial", options));
  }

  private static Choice place(InjectionQuestions ask) {
    var options = new ArrayList<Option>();
    options.add(option("", "where the dose was signed for", ""));
    for (Place place : Place.values()) {
      options.add(option(place.name().toLowerCase(Locale.ROOT), place.words(), ""));
    }
    return ask.choice("place", "Where he injected", options);
  }
}
