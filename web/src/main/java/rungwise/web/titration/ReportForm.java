package rungwise.web.titration;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.DrawnMark;
import rungwise.clinic.titration.ReportDraft;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.TimeSpan;
import rungwise.web.page.Faults;
import rungwise.web.page.Typed;

/** The report form as typed. */
record ReportForm(Typed typed) {

  static final String WITHIN_2_HOURS = "within_2_hours";
  static final String WITHIN_4_HOURS = "within_4_hours";
  static final String NOT_WITHIN_4_HOURS = "not_within_4_hours";
  static final String EXACTLY = "exactly";
  static final String BETWEEN = "between";
  static final String AT_LEAST = "at_least";
  static final String NOT_KNOWN = "not_known";
  static final String YES = "yes";

  private static final TimeSpan CLOSES = DurationLimits.CLOSES_VOLUME.value();
  private static final TimeSpan EMERGENCY = DurationLimits.EMERGENCY.value();
  private static final SoftAfter FIRST_SPAN = new SoftAfter.Between(TimeSpan.ofMinutes(0), CLOSES);
  private static final SoftAfter SECOND_SPAN = new SoftAfter.Between(CLOSES, EMERGENCY);
  private static final SoftAfter NO_END = new SoftAfter.AtLeast(EMERGENCY);

  /** An empty form: today, and the line of the dose in force. */
  static ReportForm empty(CourseState state, ClinicTime time) {
    Barrel barrel = state.question().ladder().barrel();
    String mark =
        state
            .file()
            .signedDose()
            .map(signed -> DrawnMark.text(signed.fact().volume(), barrel))
            .orElse("");
    return new ReportForm(
        Typed.NOTHING
            .with("date", time.dateText(state.now()))
            .with("barrel", barrel.token())
            .with("mark", mark)
            .with("vial", onlyVial(state.file())));
  }

  /** The vial, if he never had another one: nobody guesses between two. */
  private static String onlyVial(CourseFile file) {
    return file.vials().size() == 1 ? file.vials().getFirst().entry().id().text() : "";
  }

  /** A report that is to be corrected, with everything that it said. */
  static ReportForm of(InjectionReported report, CourseFile file, ClinicTime time) {
    Typed main =
        Typed.NOTHING
            .with("date", time.dateText(report.injectedAt()))
            .with("time", time.timeText(report.injectedAt()))
            .with("occurrence", time.occurrence(report.injectedAt()).name())
            .with("barrel", report.barrel())
            .with("mark", DrawnMark.text(report.drawn(), Barrels.of(report.barrel()).orElseThrow()))
            .with("grade", Integer.toString(report.grade().number()))
            .with("causes", report.causes().name().toLowerCase(Locale.ROOT))
            .with("place", report.place().name().toLowerCase(Locale.ROOT));
    return new ReportForm(details(soft(main, report.soft()), report.details(), file));
  }

  private static Typed soft(Typed typed, SoftAfter soft) {
    if (soft.equals(FIRST_SPAN)) {
      return typed.with("soft", WITHIN_2_HOURS);
    }
    if (soft.equals(SECOND_SPAN)) {
      return typed.with("soft", WITHIN_4_HOURS);
    }
    if (soft.equals(NO_END)) {
      return typed.with("soft", NOT_WITHIN_4_HOURS);
    }
    return switch (soft) {
      case SoftAfter.Exactly(TimeSpan duration) ->
          typed.with("soft", EXACTLY).with("exactMinutes", duration.minutesText());
      case SoftAfter.AtLeast(TimeSpan duration) ->
          typed.with("soft", AT_LEAST).with("leastMinutes", duration.minutesText());
      case SoftAfter.Between(TimeSpan from, TimeSpan before) ->
          typed
              .with("soft", BETWEEN)
              .with("fromMinutes", from.minutesText())
              .with("beforeMinutes", before.minutesText());
      case SoftAfter.NotKnown notKnown -> typed.with("soft", NOT_KNOWN);
    };
  }

  private static Typed details(Typed typed, InjectionDetails details, CourseFile file) {
    return typed
        .with("onset", details.onset().map(TimeSpan::minutesText).orElse(""))
        .with("usable", details.usable().map(TimeSpan::minutesText).orElse(""))
        .with("side", details.spot().map(spot -> spot.side().name()).orElse(""))
        .with("hour", details.spot().map(spot -> Integer.toString(spot.hour())).orElse(""))
        .with("pain", details.pain().map(pain -> Integer.toString(pain)).orElse(""))
        .with("bruise", details.bruise().words())
        .with("aroused", details.aroused().words())
        .withAll("wrong", details.causes().stream().map(Enum::name).toList())
        .with("vial", details.vial().map(vial -> vialNow(vial, file)).orElse(""))
        .with("otherTablets", details.otherTablets())
        .with("secondDose", details.secondDose().words());
  }

  /** A vial whose label was amended since is still the same vial. */
  private static String vialNow(EntryId vial, CourseFile file) {
    EntryId root = file.rootOf(file.entry(vial));
    return file.vials().stream()
        .map(CourseFile.Written::entry)
        .filter(entry -> file.rootOf(entry).equals(root))
        .map(entry -> entry.id().text())
        .findFirst()
        .orElse("");
  }

  String text(String field) {
    return typed.text(field);
  }

  /** Whether he said both his identifiers. */
  boolean isIdentified() {
    return typed.has("identified", YES);
  }

  /** Whether anything is filled in that is folded away. */
  boolean hasDetails() {
    return List.of("onset", "usable", "side", "hour", "pain", "wrong", "otherTablets", "place")
            .stream()
            .anyMatch(field -> !text(field).isBlank())
        || List.of("bruise", "aroused", "secondDose").stream()
            .anyMatch(field -> List.of("yes", "no").contains(text(field)));
  }

  ReportDraft draft(Optional<EntryId> corrects) {
    return new ReportDraft(
        text("date"),
        text("time"),
        new InjectionQuestions("", typed, Faults.NONE).saidOccurrence(),
        text("barrel"),
        text("mark"),
        text("grade"),
        text("soft"),
        text(text("soft").equals(AT_LEAST) ? "leastMinutes" : "exactMinutes"),
        text("fromMinutes"),
        text("beforeMinutes"),
        text("causes"),
        text("place"),
        new ReportDraft.Details(
            text("onset"),
            text("usable"),
            text("side"),
            text("hour"),
            text("pain"),
            text("bruise"),
            text("aroused"),
            typed.all("wrong"),
            text("vial"),
            text("otherTablets"),
            text("secondDose")),
        corrects,
        text("reason"));
  }
}
