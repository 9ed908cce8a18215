package rungwise.clinic.sheet;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.StruckReport;
import rungwise.clinic.past.PastHistories.Undone;
import rungwise.clinic.past.PastReading;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.sheet.LiftingView.Correction;
import rungwise.clinic.sheet.LiftingView.Flag;
import rungwise.clinic.sheet.LiftingView.Flagged;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.ReportFlag;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Struck;

/** What waits for a prescriber, in words. */
final class LiftingWords {

  private final ClinicTime time;
  private final Function<AccountId, String> names;

  LiftingWords(ClinicTime time, Function<AccountId, String> names) {
    this.time = time;
    this.names = names;
  }

  LiftingView of(CourseState state) {
    History history = state.question().history();
    List<Injection> open = history.openEmergencies();
    List<Before.NobodyKnows> ofNobodyKnowsWhat =
        history.before().openEmergencies(history.reviews());
    return new LiftingView(
        flagged(state),
        corrections(state, history),
        Stream.concat(
                open.stream().map(one -> emergency(one, history)),
                ofNobodyKnowsWhat.stream()
                    .map(
                        one ->
                            "Injected before "
                                + time.words(one.at())
                                + ", nobody knows with what: "
                                + one.responseWords()))
            .toList(),
        open.stream().anyMatch(one -> !one.soft().hasKnownEnd())
            || ofNobodyKnowsWhat.stream().anyMatch(one -> !one.soft().hasKnownEnd())
            || !state.question().circumstances().unfinished().isEmpty(),
        history.before().unmapped().stream()
            .map(one -> one.drawn() + ", " + one.responseWords())
            .toList());
  }

  private List<Flagged> flagged(CourseState state) {
    Map<Written<InjectionReported>, List<ReportFlag>> byReport =
        state.flagsToSee().stream()
            .collect(
                Collectors.groupingBy(ReportFlag::report, LinkedHashMap::new, Collectors.toList()));
    return byReport.entrySet().stream()
        .map(
            one ->
                new Flagged(
                    one.getKey().entry().id().text(),
                    EntryWords.of(one.getKey().fact(), time),
                    one.getValue().stream()
                        .map(flag -> new Flag(flag.kind().words(), facts(flag)))
                        .toList()))
        .toList();
  }

  private List<String> facts(ReportFlag flag) {
    return Stream.concat(
            Facts.words(flag.facts(), time).stream(),
            flag.struckBy().map(entry -> struck(entry, flag)).stream())
        .toList();
  }

  /** By what it does not follow any more: nobody had seen it before. */
  private String struck(CourseEntry entry, ReportFlag flag) {
    boolean isItsReport = entry.corrects().equals(Optional.of(flag.report().entry().id()));
    String what =
        !isItsReport
            ? "What it rests on was changed"
            : entry.fact() instanceof InjectionReported
                ? "The report was corrected"
                : "The report was withdrawn";
    return what + " by " + by(entry) + entry.reason().map(reason -> ": " + reason).orElse("");
  }

  private List<Correction> corrections(CourseState state, History history) {
    Map<Long, Struck> waiting =
        history.struck().stream()
            .filter(Struck::isToConfirm)
            .collect(Collectors.toMap(one -> one.said().entry(), one -> one, (one, other) -> one));
    var reports =
        StruckReport.of(state.file()).stream()
            .flatMap(
                one ->
                    Optional.ofNullable(waiting.get(one.said().entry().number()))
                        .map(struck -> correction(one, struck))
                        .stream());
    return Stream.concat(reports, state.undoneToConfirm().stream().map(one -> undone(one, history)))
        .toList();
  }

  private Correction undone(Undone undone, History history) {
    List<Struck> struck =
        history.struck().stream()
            .filter(one -> one.now() == undone.number() && one.isToConfirm())
            .toList();
    String said =
        struck.isEmpty()
            ? withoutATime(undone)
            : struck.stream()
                .map(one -> emergency(one.said(), history))
                .collect(Collectors.joining("; "));
    return new Correction(
        undone.entry().text(),
        said,
        "an import, " + time.words(undone.kept().at()),
        "The import is undone",
        "whoever undid it, " + time.words(undone.at()),
        undone.reason(),
        struck.stream()
            .max(Comparator.comparing(Struck::mayBeEmergency))
            .map(LiftingWords::keeps)
            .orElse("Every dose stays stopped."));
  }

  private static String withoutATime(Undone undone) {
    return PastReading.hasLongUndated(undone.kept())
        ? "Long erections without a time"
        : "Injections without a time: it is not known when the last one was";
  }

  private Correction correction(StruckReport report, Struck struck) {
    return new Correction(
        report.now().id().text(),
        EntryWords.of(report.said().fact(), time),
        by(report.said().entry()),
        EntryWords.of(report.now().fact(), time),
        by(report.now()),
        report.now().reason().orElse(""),
        keeps(struck));
  }

  private String by(CourseEntry entry) {
    return names.apply(entry.recordedBy()) + ", " + time.words(entry.recordedAt());
  }

  private static String keeps(Struck struck) {
    if (struck.mayBeEmergency()) {
      return "It still counts as an emergency, and its dose and all above it stay closed.";
    }
    return struck.said().closesVolume()
        ? "Its dose and all above it stay closed."
        : "Every dose above it stays forbidden.";
  }

  private String emergency(Injection one, History history) {
    return (history.isUndated(one) ? "Injected before " : "Injected ")
        + time.words(one.at())
        + ": "
        + one.drawn()
        + ", "
        + one.responseWords();
  }
}
