package rungwise.clinic.sheet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.Period;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.ChangeReason;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.sheet.CourseView.EntryLine;
import rungwise.clinic.sheet.CourseView.InjectionLine;
import rungwise.clinic.sheet.CourseView.ReadyLine;
import rungwise.clinic.sheet.CourseView.ReasonLine;
import rungwise.clinic.sheet.CourseView.SignedLine;
import rungwise.clinic.sheet.CourseView.StepLine;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.Remembered;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.guard.Clears;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Overriding;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.ladder.Ladder;
import rungwise.quantities.Volume;

/** Puts a course into words. */
public final class CourseViews {

  private static final String NOTHING_STOPS_HIM = "Nothing on record stops him.";

  private static final Set<String> CONDITION_FACTS = Set.of("condition", "what to do");

  private final ClinicTime time;
  private final Function<AccountId, String> names;

  /**
   * Words in the clinic's zone.
   *
   * @param names the full name of an account
   */
  public CourseViews(ClinicTime time, Function<AccountId, String> names) {
    this.time = time;
    this.names = names;
  }

  /** A course in words, as it is at its instant. */
  public CourseView of(CourseState state) {
    CourseFile file = state.file();
    Advice advice = state.advice();
    Ladder ladder = state.question().ladder();
    Clearance clearance = state.mayInject();
    Optional<Volume> proposed = advice.decision().proposed();
    return new CourseView(
        file.id(),
        file.basis(),
        man(state),
        running(state),
        advice.decision().words(),
        proposed.map(ladder::dose),
        advice.reason().rule().wording(),
        reasons(advice),
        verdicts(about(advice), state.now()),
        advice.notBefore().filter(at -> proposed.isPresent()).map(this::moment),
        state.notes(),
        file.signedDose().map(written -> signed(state, written, ladder, clearance)),
        mayInject(clearance),
        verdicts(clearance.blocks(), state.now()),
        verdicts(advice.homeVerdicts(), state.now()),
        verdicts(overridable(state, advice), state.now()),
        steps(state, advice, ladder),
        ladder.ceiling(),
        injections(file),
        ready(state),
        entries(file),
        !state.question().history().openEmergencies().isEmpty(),
        closedFrom(state, ladder),
        new AroundWords(time, this::verdicts).of(state, advice));
  }

  private CourseView.Man man(CourseState state) {
    var patient = state.file().patient();
    return new CourseView.Man(
        patient.fullName(),
        ClinicTime.words(patient.birthDate()),
        Period.between(patient.birthDate(), LocalDate.ofInstant(state.now(), time.zone()))
            .getYears(),
        patient.recordNumber(),
        state.file().opened().group().words());
  }

  private static CourseView.Running running(CourseState state) {
    var ladder = state.question().ladder();
    var protocol = state.question().protocol();
    return new CourseView.Running(
        ladder.preparation().toString(),
        ladder.barrel().words(),
        protocol.title() + ", version " + protocol.version(),
        protocol.sample(),
        state.protocolWaits(),
        state.file().plan());
  }

  private static List<Verdict> about(Advice advice) {
    var verdicts =
        new ArrayList<>(
            advice.courseVerdicts().stream()
                .filter(verdict -> verdict.rule() != GuardRule.CAUTION)
                .toList());
    verdicts.addAll(advice.verdictsOnProposal());
    return verdicts;
  }

  private List<ReasonLine> reasons(Advice advice) {
    return advice.proposal().reasons().stream()
        .map(
            reason ->
                new ReasonLine(
                    reason.rule().wording(), facts(reason.facts()), reason.source().words()))
        .toList();
  }

  private List<String> facts(List<Fact> facts) {
    return facts.stream().flatMap(fact -> fact(fact).stream()).toList();
  }

  private Optional<String> fact(Fact fact) {
    return switch (fact) {
      case Fact.Said said -> Optional.of(said.what() + ": " + said.value());
      case Fact.Happened happened ->
          Optional.of(happened.what() + ": " + time.words(happened.at()));
      case Fact.Which which -> Optional.empty();
    };
  }

  private List<VerdictText> verdicts(List<Verdict> verdicts, Instant now) {
    return verdicts.stream().map(verdict -> verdict(verdict, now)).toList();
  }

  /** The guard's own words; of a condition also which one it is, and what to do. */
  private static String sentence(Verdict verdict) {
    List<String> said =
        verdict.facts().stream()
            .filter(fact -> CONDITION_FACTS.contains(fact.what()))
            .map(fact -> ((Fact.Said) fact).value())
            .toList();
    String wording = verdict.rule().wording();
    return said.isEmpty()
        ? wording
        : wording.substring(0, wording.length() - 1) + ": " + String.join(". ", said);
  }

  private VerdictText verdict(Verdict verdict, Instant now) {
    GuardRule rule = verdict.rule();
    return new VerdictText(
        rule.name(),
        rule.guardClass(),
        sentence(verdict),
        clears(verdict.clears(), now),
        facts(verdict.facts()),
        verdict.source().words());
  }

  private String clears(Clears clears, Instant now) {
    return switch (clears) {
      case Clears.At at ->
          "Clears "
              + time.words(at.instant())
              + ", "
              + ClinicTime.distance(now, at.instant())
              + ".";
      case Clears.When when -> "Clears when " + when.act() + ".";
      case Clears.Never never -> "";
    };
  }

  private String moment(Instant instant) {
    return time.words(instant);
  }

  private String mayInject(Clearance clearance) {
    if (clearance.isClear()) {
      return NOTHING_STOPS_HIM;
    }
    return clearance.clearsAt().map(at -> "No. Wait until " + time.words(at) + ".").orElse("No.");
  }

  private SignedLine signed(
      CourseState state,
      CourseFile.Written<DoseSigned> written,
      Ladder ladder,
      Clearance clearance) {
    DoseSigned signed = written.fact();
    return new SignedLine(
        ladder.dose(signed.volume()),
        signed.place(),
        names.apply(written.entry().recordedBy()),
        time.words(written.entry().recordedAt()),
        clearance.verdicts().stream().anyMatch(Verdict::isHardStop),
        signed.changed().map(ChangeReason::words).orElse(""),
        signed.nextStep().map(ladder::dose),
        state
            .mayTakeNextStep()
            .map(next -> verdicts(next.blocks(), state.now()))
            .orElse(List.of()));
  }

  private List<StepLine> steps(CourseState state, Advice advice, Ladder ladder) {
    Optional<Volume> proposed = advice.decision().proposed();
    Optional<Volume> inForce = state.file().signedDose().map(written -> written.fact().volume());
    return advice.steps().stream()
        .map(
            step -> {
              boolean isProposed = proposed.equals(Optional.of(step.volume()));
              boolean isInForce = inForce.equals(Optional.of(step.volume()));
              boolean isAllowed = advice.isAllowed(step.volume());
              return new StepLine(
                  ladder.dose(step.volume()),
                  stepState(isProposed, isInForce, isAllowed),
                  isProposed,
                  isAllowed,
                  verdicts(step.verdicts(), state.now()));
            })
        .toList();
  }

  /** Holds that a signature of any step may override now, each once. */
  private static List<Verdict> overridable(CourseState state, Advice advice) {
    Map<GuardRule, Verdict> holds = new EnumMap<>(GuardRule.class);
    for (Place place : Place.values()) {
      advice.steps().stream()
          .map(Advice.StepVerdicts::volume)
          .filter(advice::isAllowed)
          .flatMap(volume -> Dosing.raisedBy(state.question(), volume, place).stream())
          .filter(verdict -> verdict.rule().overriding() != Overriding.NEVER)
          .forEach(verdict -> holds.putIfAbsent(verdict.rule(), verdict));
    }
    return List.copyOf(holds.values());
  }

  private static String stepState(boolean isProposed, boolean isInForce, boolean isAllowed) {
    if (isInForce) {
      return isProposed ? "signed, and proposed again" : "signed";
    }
    if (isProposed) {
      return "proposed";
    }
    return isAllowed ? "possible" : "not possible now";
  }

  private List<InjectionLine> injections(CourseFile file) {
    PreparationId now = file.plan().preparation();
    return file.reports().stream()
        .sorted(
            Comparator.comparing(
                    (CourseFile.Written<InjectionReported> written) -> written.fact().injectedAt())
                .reversed())
        .map(written -> injection(written, now))
        .toList();
  }

  private InjectionLine injection(
      CourseFile.Written<InjectionReported> written, PreparationId now) {
    InjectionReported report = written.fact();
    return new InjectionLine(
        written.entry().id().text(),
        time.words(report.injectedAt()),
        report.drawn().toString(),
        report.grade().number() + ", " + report.grade().words(),
        report.soft().words(),
        report.causes().words(),
        DetailsWords.of(report),
        report.soft().mayReach(DurationLimits.CLOSES_VOLUME.value()),
        report.preparation().equals(now),
        LocalDate.ofInstant(report.injectedAt(), time.zone()),
        report);
  }

  private static List<ReadyLine> ready(CourseState state) {
    var needed = Readiness.neededFor(state.question().preparation());
    return Arrays.stream(Readiness.values())
        .filter(needed::contains)
        .map(
            item ->
                new ReadyLine(
                    item.name(), item.words(), state.question().readiness().contains(item)))
        .toList();
  }

  private List<EntryLine> entries(CourseFile file) {
    var authors = new Remembered<AccountId, String>(names);
    var lines =
        new ArrayList<>(file.entries().stream().map(entry -> entry(entry, authors)).toList());
    Collections.reverse(lines);
    return lines;
  }

  private EntryLine entry(CourseEntry entry, Function<AccountId, String> authors) {
    String what = EntryWords.of(entry.fact(), time);
    return new EntryLine(
        entry.number(),
        time.words(entry.recordedAt()),
        authors.apply(entry.recordedBy()),
        entry.corrects().isPresent() ? what + " (addendum to an earlier entry)" : what,
        entry.reason().orElse(""));
  }

  private static Optional<Dose> closedFrom(CourseState state, Ladder ladder) {
    return ladder.rungs().stream()
        .filter(
            rung ->
                state
                    .question()
                    .history()
                    .closing(state.question().preparation(), rung)
                    .isPresent())
        .findFirst()
        .map(ladder::dose);
  }
}
