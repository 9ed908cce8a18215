package rungwise.web.titration;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.DrawnMark;
import rungwise.clinic.titration.EndAnswer;
import rungwise.clinic.titration.FormChoices;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.ReportPart;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.TimeSpan;
import rungwise.web.page.Typed;

/** The report form as typed: each part under its own name. */
record ReportForm(Typed typed) {

  static final String YES = "yes";

  /** The entry of the unfinished report that the form goes on with. */
  static final String UNFINISHED = "unfinished";

  /** Why a report is withdrawn. */
  static final String WITHDRAW_REASON = "withdrawReason";

  /** What is folded away. */
  private static final List<ReportPart> FOLDED =
      List.of(
          ReportPart.ONSET,
          ReportPart.USABLE,
          ReportPart.SIDE,
          ReportPart.HOUR,
          ReportPart.PAIN,
          ReportPart.WRONG,
          ReportPart.VIAL,
          ReportPart.OTHER_TABLETS);

  private static final List<ReportPart> FOLDED_QUESTIONS =
      List.of(ReportPart.BRUISE, ReportPart.AROUSED, ReportPart.SECOND_DOSE);

  /** A form that nobody has filled in: the line of the dose in force, and nothing about him. */
  static ReportForm empty(CourseState state) {
    Barrel barrel = state.question().ladder().barrel();
    String mark =
        state
            .file()
            .signedDose()
            .map(signed -> DrawnMark.text(signed.fact().volume(), barrel))
            .orElse("");
    return new ReportForm(Typed.NOTHING)
        .with(ReportPart.BARREL, barrel.token())
        .with(ReportPart.MARK, mark);
  }

  /** The same with why it is withdrawn. */
  ReportForm withdrawnFor(String reason) {
    return new ReportForm(typed.with(WITHDRAW_REASON, reason));
  }

  /** What was typed before. */
  static ReportForm of(ReportDraft draft) {
    Typed typed = Typed.NOTHING;
    for (Map.Entry<ReportPart, List<String>> part : draft.typed().entrySet()) {
      typed = typed.withAll(part.getKey().field(), part.getValue());
    }
    return new ReportForm(typed.with(UNFINISHED, draft.completes().map(EntryId::text).orElse("")));
  }

  /** A report that is to be corrected, with everything that it said. */
  static ReportForm of(InjectionReported report, CourseFile file, ClinicTime time) {
    return new ReportForm(Typed.NOTHING)
        .with(ReportPart.DAY, "other")
        .with(ReportPart.DATE, time.dateText(report.injectedAt()))
        .with(ReportPart.TIME, time.timeText(report.injectedAt()))
        .with(ReportPart.OCCURRENCE, time.occurrence(report.injectedAt()).name())
        .with(ReportPart.BARREL, report.barrel())
        .with(
            ReportPart.MARK,
            DrawnMark.text(report.drawn(), Barrels.of(report.barrel()).orElseThrow()))
        .with(ReportPart.GRADE, Integer.toString(report.grade().number()))
        .with(ReportPart.CAUSES, FormChoices.token(report.causes()))
        .with(ReportPart.PLACE, report.place().name().toLowerCase(Locale.ROOT))
        .with(ReportPart.SOFT, EndAnswer.of(report.soft(), report.grade()).token())
        .minutes(report.soft())
        .details(report.details(), file);
  }

  private ReportForm with(ReportPart part, String value) {
    return new ReportForm(typed.with(part.field(), value));
  }

  private ReportForm minutes(SoftAfter soft) {
    boolean isChoiceAlone =
        EndAnswer.of(text(ReportPart.SOFT)).filter(one -> one.parts().isEmpty()).isPresent();
    if (isChoiceAlone) {
      return this;
    }
    return switch (soft) {
      case SoftAfter.Exactly(TimeSpan duration) ->
          with(ReportPart.EXACT_MINUTES, duration.minutesText());
      case SoftAfter.AtLeast(TimeSpan duration) ->
          with(ReportPart.LEAST_MINUTES, duration.minutesText());
      case SoftAfter.Between(TimeSpan from, TimeSpan before) ->
          with(ReportPart.FROM_MINUTES, from.minutesText())
              .with(ReportPart.BEFORE_MINUTES, before.minutesText());
      case SoftAfter.NotKnown notKnown -> this;
    };
  }

  private ReportForm details(InjectionDetails details, CourseFile file) {
    ReportForm form =
        with(ReportPart.ONSET, details.onset().map(TimeSpan::minutesText).orElse(""))
            .with(ReportPart.USABLE, details.usable().map(TimeSpan::minutesText).orElse(""))
            .with(ReportPart.SIDE, details.spot().map(spot -> spot.side().name()).orElse(""))
            .with(
                ReportPart.HOUR,
                details.spot().map(spot -> Integer.toString(spot.hour())).orElse(""))
            .with(ReportPart.PAIN, details.pain().map(pain -> Integer.toString(pain)).orElse(""))
            .with(ReportPart.BRUISE, details.bruise().words())
            .with(ReportPart.AROUSED, details.aroused().words())
            .with(
                ReportPart.VIAL,
                details.vial().map(vial -> vialNow(vial, file)).orElse(ReportPart.VIAL_NOT_KNOWN))
            .with(ReportPart.OTHER_TABLETS, details.otherTablets())
            .with(ReportPart.SECOND_DOSE, details.secondDose().words());
    return new ReportForm(
        form.typed()
            .withAll(ReportPart.WRONG.field(), details.causes().stream().map(Enum::name).toList()));
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

  String text(ReportPart part) {
    return typed.text(part.field());
  }

  String unfinished() {
    return typed.text(UNFINISHED);
  }

  /** Whether anything is filled in that is folded away. */
  boolean hasDetails() {
    return FOLDED.stream().anyMatch(part -> !text(part).isBlank())
        || FOLDED_QUESTIONS.stream().anyMatch(part -> List.of("yes", "no").contains(text(part)));
  }

  ReportDraft draft(Optional<EntryId> corrects) {
    var parts = new EnumMap<ReportPart, List<String>>(ReportPart.class);
    for (ReportPart part : ReportPart.values()) {
      if (typed.fields().containsKey(part.field())) {
        parts.put(part, List.copyOf(typed.all(part.field())));
      }
    }
    return new ReportDraft(parts, corrects, entry(unfinished()));
  }

  /** An entry as the page wrote it; what is none is left out. */
  private static Optional<EntryId> entry(String text) {
    try {
      return text.isEmpty()
          ? Optional.empty()
          : Optional.of(new EntryId(UUID.fromString(text).toString()));
    } catch (IllegalArgumentException notAnEntry) {
      return Optional.empty();
    }
  }
}
