package rungwise.web.room;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.Moment;
import rungwise.clinic.course.Vial;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.room.StartDraft;
import rungwise.clinic.room.WatchView;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.supply.ClinicVial;
import rungwise.dosing.history.Spot;
import rungwise.dosing.syringe.Barrel;
import rungwise.web.injection.InjectionQuestions;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.DoseLines;
import rungwise.web.page.DosePicture;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.VerdictLine;
import rungwise.web.titration.CourseWords;

/**
 * An injection in the clinic: before it, or while he is under observation.
 *
 * @param notice what was just done; may be empty
 * @param mayRecord whether the reader may write anything down
 */
public record VisitPage(
    String path,
    String coursePath,
    CourseView view,
    String notice,
    Faults faults,
    boolean mayRecord,
    Optional<Before> before,
    Optional<Watch> watch) {

  /**
   * Before the needle.
   *
   * @param secondDose what the rule for a second dose in the same visit says, if it lets one follow
   * @param lastPlace where he was injected last; may be empty
   * @param isOpen whether the form stands open
   */
  public record Before(
      Optional<DoseLines> dose,
      Optional<String> picture,
      List<VerdictLine> blocks,
      List<VerdictLine> cautions,
      Optional<String> secondDose,
      String lastPlace,
      StartForm form,
      boolean isOpen) {
    public Before {
      blocks = List.copyOf(blocks);
      cautions = List.copyOf(cautions);
    }
  }

  /** The form by which it is written down that he was injected. */
  public record StartForm(
      Field date,
      Field time,
      Optional<Choice> occurrence,
      Field mark,
      Optional<Choice> vial,
      Choice side,
      Choice hour,
      List<Field> vitals,
      Choice given) {}

  /**
   * Under observation.
   *
   * @param others how many more injections of his are under observation
   */
  public record Watch(WatchView view, String path, int others, NoteForm note, EndForm end) {}

  /** The form by which it is written down what was seen. */
  public record NoteForm(
      Choice moment,
      Field date,
      Field time,
      Optional<Choice> occurrence,
      Choice grade,
      List<Field> vitals) {}

  /** The form by which an observation is ended. */
  public record EndForm(
      Choice how,
      Field date,
      Field time,
      Optional<Choice> occurrence,
      Choice grade,
      Choice causes,
      Choice wrong,
      Field pain,
      List<Field> vitals,
      Field note) {}

  static Before before(
      CourseView view,
      Barrel barrel,
      Optional<Spot> last,
      Optional<String> secondDose,
      Optional<Choice> vial,
      InjectionQuestions ask,
      ClinicTime time) {
    return new Before(
        view.signed().map(signed -> DoseLines.of(signed.dose())),
        view.signed().flatMap(signed -> DosePicture.svg(signed.dose(), "visit")),
        view.blocks().stream().map(CourseWords::line).toList(),
        view.around().cautions().stream().map(CourseWords::line).toList(),
        secondDose,
        last.map(Spot::words).orElse(""),
        new StartForm(
            ask.field(Field.Kind.DATE, "date", "Date"),
            clock(ask, "Time of the injection"),
            ask.occurrence(time),
            ask.mark(barrel),
            vial,
            side(ask, last),
            ask.hour(),
            ask.vitals(),
            ask.choice(
                    "given",
                    "Only if it has happened already",
                    List.of(
                        new Option(
                            VisitForm.YES,
                            "It has happened already: record it whatever the checks say",
                            "What the checks say is shown once more when it is recorded.",
                            false)))
                .withFaults(Faults.NONE)),
        view.isClear() || !ask.faults().isEmpty());
  }

  /**
   * Which vial it is drawn from, where the clinic keeps any of its own, or the labels of his
   * differ: then none of them is chosen beforehand.
   */
  static Optional<Choice> vial(CourseFile file, List<ClinicVial> kept, InjectionQuestions ask) {
    boolean doLabelsDiffer = VialLabels.of(file.ownVials()).size() > 1;
    if (kept.isEmpty() && !doLabelsDiffer) {
      return Optional.empty();
    }
    var options = new ArrayList<Option>();
    if (doLabelsDiffer) {
      file.ownVials().reversed().stream().map(VisitPage::own).forEach(options::add);
    } else {
      options.add(inUse(file));
    }
    kept.forEach(
        one ->
            options.add(
                new Option(one.id().text(), "the clinic's: " + label(one.vial()), "", false)));
    if (doLabelsDiffer) {
      options.add(
          new Option(
              StartDraft.VIAL_NOT_KNOWN,
              "not known which",
              "Only if it has happened already.",
              false));
    }
    return Optional.of(ask.choice(VisitForm.VIAL, "Drawn from which vial", options));
  }

  private static Option inUse(CourseFile file) {
    String his =
        file.vial()
            .map(vial -> "his own: " + label(vial.fact().vial()))
            .orElse("his own: none is on record");
    return new Option("", his, "", false);
  }

  private static Option own(Written<VialReceived> vial) {
    return new Option(vial.entry().id().text(), "his own: " + label(vial.fact().vial()), "", false);
  }

  private static String label(Vial vial) {
    return "lot " + vial.lot() + ", " + vial.composition();
  }

  /** Sides are used in turn. */
  private static Choice side(InjectionQuestions ask, Optional<Spot> last) {
    return last.map(
            spot ->
                ask.side()
                    .withHint(
                        "Last time: "
                            + spot.words()
                            + ". Sides are used in turn: "
                            + spot.next().words()
                            + "."))
        .orElseGet(ask::side);
  }

  private static Field clock(InjectionQuestions ask, String label) {
    return ask.field(Field.Kind.TEXT, "time", label)
        .withHint("24-hour clock; it may lie in the past");
  }

  static NoteForm note(InjectionQuestions ask, ClinicTime time) {
    List<Option> moments =
        Arrays.stream(Moment.values())
            .filter(moment -> moment != Moment.FULLY_SOFT)
            .map(moment -> new Option(moment.name(), moment.words(), "", false))
            .toList();
    return new NoteForm(
        ask.choice("moment", "What was seen", moments),
        ask.field(Field.Kind.DATE, "date", "Date"),
        clock(ask, "Time"),
        ask.occurrence(time),
        ask.gradeIfSeen("How firm (optional)"),
        ask.vitals());
  }

  static EndForm end(InjectionQuestions ask, ClinicTime time) {
    return new EndForm(
        ask.choice(
            "how",
            "How it ended",
            List.of(
                new Option(
                    VisitForm.SOFT,
                    "He is fully soft again",
                    "The time below is when he was.",
                    false),
                new Option(
                    VisitForm.LEFT,
                    "He left before it was down",
                    "The time below is when he was last seen. He must be called back: no dose is"
                        + " possible until the report says how it ended.",
                    false))),
        ask.field(Field.Kind.DATE, "date", "Date"),
        clock(ask, "Fully soft at, or last seen at"),
        ask.occurrence(time),
        ask.grade("The firmest that it was"),
        ask.causes(),
        ask.wrong(),
        ask.pain(),
        ask.vitals(),
        ask.optional(Field.Kind.TEXT, "note", "Note"));
  }
}
