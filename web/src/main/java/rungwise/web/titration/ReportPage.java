package rungwise.web.titration;

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
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.sheet.OpenErectionView.Way;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.UnfinishedReports;
import rungwise.clinic.titration.ReportPart;
import rungwise.dosing.history.Place;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.web.access.NamesCourses;
import rungwise.web.injection.InjectionQuestions;
import rungwise.web.injection.TabletForm;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The report form.
 *
 * @param path where it is sent
 * @param correction the entry that is corrected, if one is
 * @param open the erection of which nobody has said how it ended
 * @param isUnfinished whether what the form shows stands unfinished on record: it may mean 4 hours
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
    Optional<OpenErectionView> open,
    boolean isUnfinished,
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
    Field reason,
    Field withdrawReason)
    implements NamesCourses {

  public ReportPage {
    unfinished = List.copyOf(unfinished);
  }

  /** Whether this form is where the end of the open erection is written down. */
  public boolean isItsEnd() {
    return open.map(OpenErectionView::way)
        .filter(
            way -> way instanceof Way.Report || way.equals(new Way.Correct(correction.orElse(""))))
        .isPresent();
  }

  /**
   * Whether the first question has the focus at once: not where something is to be read before it,
   * which ears would miss.
   */
  public boolean isFocused() {
    return faults.isEmpty()
        && open.isEmpty()
        && !isUnfinished
        && unfinished.isEmpty()
        && who.namesakes().isEmpty()
        && who.flaws().isEmpty();
  }

  /** Whether it stays open what may have been wrong, however firm it was. */
  public boolean areCausesKept() {
    return !causes.fault().isEmpty() || causes.options().stream().anyMatch(Option::picked);
  }

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
   * @param flaws what of his record is not as it was written, in words; empty if nothing
   */
  public record Who(
      String fullName,
      String birthDate,
      String recordNumber,
      List<Namesake> namesakes,
      List<String> flaws) {
    public Who {
      namesakes = List.copyOf(namesakes);
      flaws = List.copyOf(flaws);
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
  record Around(
      CourseState state,
      List<Barrel> barrels,
      List<CourseFile> alike,
      Optional<OpenErectionView> notOver,
      ClinicTime time) {}

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
        who(state.file(), entry.isPresent() ? List.of() : around.alike()),
        entry,
        faults,
        around.notOver(),
        open.stream().anyMatch(one -> one.entry().id().text().equals(form.unfinished())),
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
        ask.field(Field.Kind.TEXT, "reason", "Why it is corrected"),
        ask.field(Field.Kind.TEXT, ReportForm.WITHDRAW_REASON, "Reason"));
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

  private static Who who(CourseFile file, List<CourseFile> alike) {
    Patient patient = file.patient();
    return new Who(
        patient.fullName(),
        ClinicTime.words(patient.birthDate()),
        patient.recordNumber(),
        alike.stream().map(other -> namesake(patient, other)).toList(),
        file.flaws().stream().map(Flaw::words).toList());
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
