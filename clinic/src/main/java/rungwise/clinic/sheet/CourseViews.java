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
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.StillWanted;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.day.DayLine;
import rungwise.clinic.day.Examination;
import rungwise.clinic.day.Urgency;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.reaching.ReachWords;
import rungwise.clinic.rescuing.RescueView;
import rungwise.clinic.rescuing.RescueViews;
import rungwise.clinic.sheet.CourseView.EntryLine;
import rungwise.clinic.sheet.CourseView.InjectionLine;
import rungwise.clinic.sheet.CourseView.ReadyLine;
import rungwise.clinic.sheet.CourseView.ReasonLine;
import rungwise.clinic.sheet.CourseView.SignedLine;
import rungwise.clinic.sheet.CourseView.StepLine;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.Remembered;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Overriding;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Puts a course into words. */
public final class CourseViews {

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

  /** The full name of an account. */
  public String nameOf(AccountId account) {
    return names.apply(account);
  }

  /** The erection of which nobody has said how it ended, in words. */
  public Optional<OpenErectionView> notOver(CourseState state) {
    return new OpenErectionWords(time, names).of(state);
  }

  /** The call about a long erection, in words. */
  public CallView call(CourseState state) {
    return new CallViews(time, names).of(state, man(state));
  }

  /**
   * What was given and measured in his rescues, in words.
   *
   * @param limits what the clinic has signed, or the sample
   */
  public RescueView rescue(CourseState state, RescueLimits limits) {
    return new RescueViews(time, names).of(state, limits);
  }

  /** By whom, when and why the course was brought to a stand; empty while it runs. */
  public Optional<String> standing(CourseState state) {
    return LifeWords.standing(state.file(), time, names);
  }

  /** Who he is, in words. */
  public CourseView.Man man(CourseState state) {
    return CourseViews.man(state, time);
  }

  /** A course in words, as it is at its instant. */
  public CourseView of(CourseState state) {
    CourseFile file = state.file();
    Advice advice = state.advice();
    Ladder ladder = state.question().ladder();
    Clearance clearance = state.mayInject();
    Optional<Volume> proposed = advice.decision().proposed();
    var texts = new VerdictWords(time, state);
    CourseView.Around around = new AroundWords(time, texts).of(state, advice);
    DayLine day = DayLine.of(state, advice, clearance, Examination.dueSince(state, time));
    Optional<OpenErectionView> open = notOver(state);
    return new CourseView(
        file.id(),
        file.basis(),
        man(state),
        running(state),
        advice.decision().words(),
        proposed.map(ladder::dose),
        because(advice, open),
        reasons(advice),
        texts.of(about(advice)),
        advice.notBefore().filter(at -> proposed.isPresent()).map(this::moment),
        state.notes(),
        file.signedDose().map(written -> signed(state, written, ladder, clearance)),
        day,
        open,
        new ReachWords(time, names).of(state),
        new NowWords(time, names).of(day.now(), clearance, state),
        texts.of(clearance.blocks()),
        texts.of(advice.homeVerdicts()),
        texts.of(overridable(state, advice)),
        steps(state, advice, texts),
        ladder.ceiling(),
        injections(state),
        ready(state),
        entries(file),
        closedFrom(state, ladder),
        around,
        new LiftingWords(time, names).of(state));
  }

  /** The same for the day's list, which needs little of it. */
  public DayView dayOf(CourseState state) {
    Advice advice = state.advice();
    Clearance clearance = state.mayInject();
    Ladder ladder = state.question().ladder();
    DayLine day = DayLine.of(state, advice, clearance, Examination.dueSince(state, time));
    return new DayView(
        day,
        advice.decision().words()
            + advice
                .decision()
                .proposed()
                .map(volume -> " " + ladder.dose(volume).volumeAndMark())
                .orElse(""),
        day.open().isPresent() ? "" : advice.reason().rule().wording(),
        new NowWords(time, names).of(day.now(), clearance, state));
  }

  /** Before 4 hours are over nobody is told that they may have passed. */
  private static String because(Advice advice, Optional<OpenErectionView> open) {
    TitrationRule rule = advice.reason().rule();
    return open.filter(one -> rule == TitrationRule.EMERGENCY_FIRST)
        .filter(one -> one.urgency() != Urgency.EMERGENCY_DEPARTMENT)
        .map(OpenErectionView::fourHours)
        .orElse(rule.wording());
  }

  private static CourseView.Man man(CourseState state, ClinicTime time) {
    var patient = state.file().patient();
    return new CourseView.Man(
        patient.fullName(),
        ClinicTime.words(patient.birthDate()),
        Period.between(patient.birthDate(), LocalDate.ofInstant(state.now(), time.zone()))
            .getYears(),
        patient.recordNumber(),
        state.file().opened().group().words(),
        state.file().flaws().stream().map(Flaw::words).toList());
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
                    reason.rule(),
                    reason.rule().wording(),
                    Facts.words(reason.facts(), time),
                    reason.source().words()))
        .toList();
  }

  private String moment(Instant instant) {
    return time.words(instant);
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
        DayLine.isSuspended(state, clearance),
        signed.changed().map(ChangeReason::words).orElse(""),
        signed.accepted().map(TimeSpan::toString).orElse(""),
        signed.nextStep().map(ladder::dose),
        state
            .mayTakeNextStep()
            .map(next -> new VerdictWords(time, state).of(next.blocks()))
            .orElse(List.of()));
  }

  private List<StepLine> steps(CourseState state, Advice advice, VerdictWords texts) {
    Ladder ladder = state.question().ladder();
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
                  texts.of(step.verdicts()));
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

  private List<InjectionLine> injections(CourseState state) {
    return state.file().reports().stream()
        .sorted(
            Comparator.comparing(
                    (CourseFile.Written<InjectionReported> written) -> written.fact().injectedAt())
                .reversed())
        .map(written -> injection(written, state))
        .toList();
  }

  private InjectionLine injection(
      CourseFile.Written<InjectionReported> written, CourseState state) {
    StillWanted.orStop();
    InjectionReported report = written.fact();
    boolean isOfThis =
        state.question().history().of(state.question().preparation()).stream()
            .anyMatch(one -> one.entry() == written.entry().number());
    return new InjectionLine(
        written.entry().id().text(),
        time.words(report.injectedAt()),
        isOfThis
            ? report.drawn() + InjectedWords.besides(written, state)
            : InjectedWords.of(written, state),
        report.grade().number() + ", " + report.grade().words(),
        report.soft().words(),
        report.causes().words(),
        DetailsWords.of(report),
        report.soft().mayReach(DurationLimits.CLOSES_VOLUME.value()),
        isOfThis,
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
    StillWanted.orStop();
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
