package rungwise.web.titration;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.ReportUnfinished;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.UnfinishedReports;
import rungwise.clinic.titration.ReportPart;
import rungwise.dosing.history.Place;
import rungwise.dosing.known.DurationLimits;
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
 * @param danger what may mean 4 hours, where the form stands unfinished on record
 * @param unfinished other unfinished reports of his, each with its address
 * @param continues the entry of the unfinished report that the form goes on with; may be empty
 * @param syringe the syringe whose line is asked for
 * @param isOtherSyringe whether that is another one than the plan's
 * @param whichVial asked of every report where the labels of his vials differ
 */
public record ReportPage(
    String path,
    String coursePath,
    Who who,
    Optional<String> correction,
    Faults faults,
    Optional<Danger> danger,
    List<Unfinished> unfinished,
    String continues,
    Choice identified,
    When when,
    Field mark,
    String syringe,
    Choice barrel,
    boolean isOtherSyringe,
    Optional<Choice> whichVial,
    Choice grade,
    Soft soft,
    Choice causes,
    TabletForm tablet,
    More more,
    Choice place,
    Field reason)
    implements NamesCourses {

  public ReportPage {
    unfinished = List.copyOf(unfinished);
  }

  /**
   * What is entered may mean 4 hours or still firm.
   *
   * @param since how long ago he injected and when 4 hours are or were; may be empty
   * @param plan his emergency plan in a line; may be empty
   */
  public record Danger(String since, String plan) {}

  /** A report that stands unfinished on record, and the page that goes on with it. */
  public record Unfinished(String words, String path) {}

  /**
   * When he injected.
   *
   * @param occurrence asked only where the time of day came twice
   */
  public record When(Choice day, Field date, Field time, Optional<Choice> occurrence) {

    /** Whether the date stays open, whatever day is chosen. */
    public boolean isDateKept() {
      return !date.value().isEmpty();
    }
  }

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

  /**
   * How long until he was fully soft.
   *
   * @param answers each with its fields
   * @param occurrence asked only where the clock time of the end came twice
   */
  public record Soft(Choice choice, List<Answered> answers, Optional<Choice> occurrence) {
    public Soft {
      answers = List.copyOf(answers);
    }
  }

  /**
   * One answer with its own fields.
   *
   * @param from the hour at which it begins on the scale; empty beside the scale
   * @param isKept whether its fields stay open, whatever is chosen
   */
  public record Answered(
      Option option, String from, boolean isDanger, boolean isKept, List<Field> fields) {
    public Answered {
      fields = List.copyOf(fields);
    }
  }

  /**
   * What is folded away.
   *
   * @param vial where he has one, and all labels say the same
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
      Choice secondDose) {}

  /** What surrounds the form: the course, the syringes of the clinic, the men who are alike. */
  record Around(CourseState state, List<Barrel> barrels, List<CourseFile> alike, ClinicTime time) {}

  static ReportPage of(Around around, ReportForm form, Optional<String> entry, Faults faults) {
    CourseState state = around.state();
    String course = "/courses/" + state.file().id();
    Barrel planned = state.question().ladder().barrel();
    Barrel used = Barrels.of(form.text(ReportPart.BARREL)).orElse(planned);
    var ask = new InjectionQuestions("", form.typed(), faults);
    List<Written<ReportUnfinished>> open = UnfinishedReports.of(state.file());
    return new ReportPage(
        course + "/report" + entry.map(one -> "/" + one).orElse(""),
        course,
        who(state.file().patient(), entry.isPresent() ? List.of() : around.alike()),
        entry,
        faults,
        open.stream()
            .filter(one -> one.entry().id().text().equals(form.unfinished()))
            .map(one -> danger(around, one.fact()))
            .findFirst(),
        open.stream()
            .filter(one -> !one.entry().id().text().equals(form.unfinished()))
            .map(one -> unfinished(around, course, one))
            .toList(),
        form.unfinished(),
        identified(ask),
        when(ask, around.time()),
        ask.mark(used),
        used.words(),
        barrel(ask, around.barrels(), planned, used),
        !used.equals(planned),
        vial(ask, state.file()).filter(asked -> doLabelsDiffer(state.file())),
        ask.grade("How firm it was"),
        EndQuestion.of(ask, around.time()),
        ask.causes(),
        TabletForm.ofReport(ask),
        more(ask, form, state.file()),
        place(ask),
        ask.field(Field.Kind.TEXT, "reason", "Why it is corrected"));
  }

  private static Danger danger(Around around, ReportUnfinished fact) {
    return new Danger(
        fact.injectedAt().map(at -> since(around, at)).orElse(""),
        around.state().file().emergencyPlan().map(EmergencyPlan::words).orElse(""));
  }

  private static String since(Around around, Instant injected) {
    Instant fourHours = DurationLimits.EMERGENCY.value().after(injected);
    boolean isOver = !fourHours.isAfter(around.state().now());
    return "Injected "
        + ClinicTime.distance(around.state().now(), injected)
        + "; 4 hours "
        + (isOver ? "were" : "are")
        + " at "
        + around.time().timeText(fourHours)
        + ".";
  }

  private static Unfinished unfinished(
      Around around, String course, Written<ReportUnfinished> written) {
    return new Unfinished(
        "told " + around.time().words(written.entry().recordedAt()),
        course
            + "/report"
            + written.fact().about().map(report -> "/" + report).orElse("")
            + "?draft="
            + written.entry().id());
  }

  private static Choice identified(InjectionQuestions ask) {
    return ask.choice(
        "identified",
        "Is it he?",
        List.of(
            new Option(
                ReportForm.YES,
                "He said his birth date and record number himself",
                "Ask; do not read them out to him.",
                false)));
  }

  private static When when(InjectionQuestions ask, ClinicTime time) {
    return new When(
        ask.choice(
                "day",
                "When did he inject?",
                List.of(
                    option("last_night", "last night", ""),
                    option("today", "today", ""),
                    option("other", "another day", "")))
            .withHint("Last night is from 18:00 to 06:00."),
        ask.optional(Field.Kind.DATE, "date", "Date of the injection"),
        ask.field(Field.Kind.TEXT, "time", "Time of day, hours and minutes")
            .withHint("such as 21:30, 2130 or 9:30 pm"),
        ask.occurrence(time));
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
        vial(ask, file).filter(asked -> !doLabelsDiffer(file)),
        ask.optional(Field.Kind.TEXT, "otherTablets", "Other tablets or drugs that day"),
        answer(ask, "secondDose", "A second dose that day?"));
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
    file.vials()
        .reversed()
        .forEach(
            vial ->
                options.add(
                    option(
                        vial.entry().id().text(),
                        "lot " + vial.fact().vial().lot() + ", " + vial.fact().vial().composition(),
                        "")));
    options.add(option(ReportPart.VIAL_NOT_KNOWN, "not known which", ""));
    return Optional.of(ask.choice("vial", "Which vial it was drawn from", options, inUse(file)));
  }

  /** The vial in use, where all that he has say the same; where two differ nothing is preset. */
  private static String inUse(CourseFile file) {
    return file.vial()
        .filter(vial -> !doLabelsDiffer(file))
        .map(vial -> vial.entry().id().text())
        .orElse("");
  }

  private static boolean doLabelsDiffer(CourseFile file) {
    return VialLabels.of(file.vials()).size() > 1;
  }

  private static Choice place(InjectionQuestions ask) {
    var options = new ArrayList<Option>();
    for (Place place : List.of(Place.HOME, Place.CLINIC)) {
      options.add(option(place.name().toLowerCase(Locale.ROOT), place.words(), ""));
    }
    Choice choice = ask.choice("place", "Where he injected", options);
    return ask.text("place").isEmpty() ? choice.withPicked(Set.of("home")) : choice;
  }
}
