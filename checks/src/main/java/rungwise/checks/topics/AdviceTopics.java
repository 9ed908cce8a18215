package rungwise.checks.topics;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.TimeGuards;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What the engine says of a history: when the next injection may be, and what dose. */
final class AdviceTopics {

  private static final Instant DAY_ONE = Instant.parse("2026-01-05T00:00:00Z");
  private static final Preparation VIAL = SamplePreparations.ALPROSTADIL_20;
  private static final long MILLISECONDS_IN_AN_HOUR = TimeSpan.ofHours(1).milliseconds();
  private static final long MILLISECONDS_IN_A_MINUTE = TimeSpan.ofMinutes(1).milliseconds();

  private AdviceTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("home frequency", AdviceTopics::homeFrequency)
        .on("alprostadil next dose", "may_give_now", AdviceTopics::mayGive)
        .on("alprostadil next dose", "may_give_third_today", AdviceTopics::mayGiveThird)
        .on("alprostadil in-office", "leave_clinic_before_full_detumescence", AdviceTopics::leave)
        .on("dose reduction", AdviceTopics::doseReduction)
        .on("rigidity grade to adequacy", AdviceTopics::adequacy);
  }

  private static Question question(List<Injection> injections, Instant now) {
    Protocol protocol = SampleProtocol.usVialAndSyringe();
    return new Question(
        AetiologyGroup.VASCULOGENIC,
        Screening.all(rungwise.dosing.screening.Answer.NO, now),
        Set.of(Readiness.values()),
        protocol,
        ladder(protocol),
        History.of(injections),
        Optional.empty(),
        Circumstances.NONE,
        now);
  }

  private static Ladder ladder(Protocol protocol) {
    return LadderProposal.of(protocol, VIAL, Barrels.U100_1, AetiologyGroup.VASCULOGENIC)
        .orThrow()
        .ladder();
  }

  private static Injection injection(long entry, Instant at, Grade grade, SoftAfter soft) {
    Volume second = ladder(SampleProtocol.usVialAndSyringe()).rungs().get(1);
    return new Injection(
        entry,
        at,
        VIAL,
        second,
        Optional.of(second),
        grade,
        soft,
        SimpleCauses.NONE_FOUND,
        Injection.Setting.CLINIC_OBSERVED,
        Stock.NOT_RECORDED);
  }

  private static Injection uneventful(long entry, Instant at) {
    return injection(
        entry, at, Grade.FIRM_NOT_USABLE, new SoftAfter.Exactly(TimeSpan.ofMinutes(1)));
  }

  /** The injections are taken one after the other, until a guard forbids the next. */
  private static Answer homeFrequency(Input input) {
    var before = new ArrayList<Injection>();
    for (String hours : input.text("injection_times_h").split("\\|", -1)) {
      Instant now = DAY_ONE.plusMillis(Long.parseLong(hours) * MILLISECONDS_IN_AN_HOUR);
      List<Verdict> verdicts = TimeGuards.ask(question(before, now));
      if (!verdicts.isEmpty()) {
        return Answer.words(violation(verdicts.getFirst()));
      }
      before.add(uneventful(before.size(), now));
    }
    return Answer.words("allowed");
  }

  private static String violation(Verdict verdict) {
    return switch (verdict.rule()) {
      case SPACING -> "violation_24h";
      case WEEKLY_COUNT -> "violation_3_per_week";
      default -> throw new InputFault("a guard that the rows do not know: " + verdict);
    };
  }

  private static Answer mayGive(Input input) {
    input.note("last_dose_mcg", "response", "aetiology");
    Instant last =
        DAY_ONE.minusMillis(
            input
                .decimal("hours_since")
                .multiply(BigDecimal.valueOf(MILLISECONDS_IN_AN_HOUR))
                .longValueExact());
    return afterDoses(input, last);
  }

  private static Answer mayGiveThird(Input input) {
    return afterDoses(input, DAY_ONE.minusMillis(MILLISECONDS_IN_AN_HOUR));
  }

  /** The last dose stands at an instant, and the others of the day an hour before each other. */
  private static Answer afterDoses(Input input, Instant last) {
    String label = input.text("label");
    if (SampleProtocol.of(label).isEmpty()) {
      return SampleProtocol.none(label);
    }
    int doses = input.has("doses_in_24h") ? input.decimal("doses_in_24h").intValueExact() : 1;
    var before = new ArrayList<Injection>();
    for (int i = 0; i < doses; i++) {
      before.add(uneventful(i, last.minusMillis(i * MILLISECONDS_IN_AN_HOUR)));
    }
    return Answer.yesOrNo(TimeGuards.ask(question(before, DAY_ONE)).isEmpty());
  }

  /** Whoever leaves is still firm when last seen: everything stops until that has ended. */
  private static Answer leave(Input input) {
    var left = injection(1, DAY_ONE, Grade.USABLE, new SoftAfter.AtLeast(TimeSpan.ofMinutes(30)));
    Decision decision = Dosing.advise(question(List.of(left), DAY_ONE)).decision();
    return Answer.words(decision instanceof Decision.Stop ? "not_allowed" : "allowed");
  }

  private static Answer doseReduction(Input input) {
    long milliseconds =
        input
            .decimal("duration_min")
            .multiply(BigDecimal.valueOf(MILLISECONDS_IN_A_MINUTE))
            .longValueExact();
    boolean isAdequate = input.text("adequate").equals("true");
    var report =
        injection(
            1,
            DAY_ONE,
            isAdequate ? Grade.USABLE : Grade.FIRM_NOT_USABLE,
            new SoftAfter.Exactly(new TimeSpan(milliseconds)));
    Instant later = DAY_ONE.plusMillis(2 * TimeGuards.SEVEN_DAYS.milliseconds());
    return Answer.words(wordOf(Dosing.advise(question(List.of(report), later)).decision()));
  }

  private static String wordOf(Decision decision) {
    return switch (decision) {
      case Decision.Start start -> "start_dose";
      case Decision.StepUp up -> "increase_dose";
      case Decision.Repeat repeat -> "same_dose";
      case Decision.StepDown down -> "reduce_dose";
      case Decision.Pause pause -> "pause";
      case Decision.Stop stop -> "stop";
      case Decision.Refer refer -> "refer";
    };
  }

  private static Answer adequacy(Input input) {
    int number = input.decimal("grade").intValueExact();
    Grade grade = Grade.of(number).orElseThrow(() -> new InputFault("no grade is " + number));
    if (!grade.isUseful()) {
      return Answer.words("insufficient");
    }
    return Answer.words(
        grade == Grade.FULLY_FIRM ? "sufficient_fully_rigid" : "sufficient_for_penetration");
  }
}
