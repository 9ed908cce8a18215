package rungwise.dosing.decision;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.decision.Advice.StepVerdicts;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.quantities.Volume;

/**
 * The values of an advice, without a word of it: by them two versions of the engine are compared.
 *
 * @param volume the proposed volume, of a kind that has one
 * @param spoken the rules that spoke, the deciding reason first
 * @param choice the way in which the dose was chosen, and the population if one was asked
 * @param protocol the key of the protocol version
 * @param engine the version of the engine
 */
public record DecisionValues(
    Kind kind,
    Optional<Volume> volume,
    List<Spoken> spoken,
    Optional<Instant> notBefore,
    String choice,
    String protocol,
    String engine) {

  /** What was proposed. */
  public enum Kind {
    START,
    STEP_UP,
    REPEAT,
    STEP_DOWN,
    PAUSE,
    STOP,
    REFER;

    static Kind of(Decision decision) {
      return switch (decision) {
        case Decision.Start start -> START;
        case Decision.StepUp up -> STEP_UP;
        case Decision.Repeat repeat -> REPEAT;
        case Decision.StepDown down -> STEP_DOWN;
        case Decision.Pause pause -> PAUSE;
        case Decision.Stop stop -> STOP;
        case Decision.Refer refer -> REFER;
      };
    }
  }

  /** Of what a rule spoke. */
  public enum Part {
    REASON,
    COURSE,
    STEP,
    NOW,
    HOME
  }

  /**
   * A rule that spoke.
   *
   * @param rule its name, which an engine of another version may not know
   * @param steps the steps of which it spoke, where it spoke of steps
   */
  public record Spoken(Part part, String rule, Optional<Steps> steps) {}

  /** Steps of a ladder that follow each other, both ends included. */
  public record Steps(Volume from, Volume to) {}

  public DecisionValues {
    spoken = List.copyOf(spoken);
  }

  /** The values of an advice. */
  public static DecisionValues of(Advice advice) {
    var spoken = new ArrayList<Spoken>();
    advice.proposal().reasons().stream()
        .map(reason -> new Spoken(Part.REASON, reason.rule().name(), Optional.empty()))
        .forEach(spoken::add);
    spoken.addAll(of(Part.COURSE, advice.courseVerdicts()));
    spoken.addAll(of(advice.steps()));
    spoken.addAll(of(Part.NOW, advice.timeVerdicts()));
    spoken.addAll(of(Part.HOME, advice.homeVerdicts()));
    return new DecisionValues(
        Kind.of(advice.decision()),
        advice.decision().proposed(),
        spoken,
        advice.notBefore(),
        advice.choice(),
        advice.protocol(),
        advice.engine());
  }

  private static List<Spoken> of(Part part, List<Verdict> verdicts) {
    return verdicts.stream()
        .map(verdict -> new Spoken(part, verdict.rule().name(), Optional.empty()))
        .toList();
  }

  /** Each rule once for each row of steps that follow each other. */
  private static List<Spoken> of(List<StepVerdicts> steps) {
    return Stream.of(GuardRule.values()).flatMap(rule -> runsOf(rule, steps).stream()).toList();
  }

  private static List<Spoken> runsOf(GuardRule rule, List<StepVerdicts> steps) {
    var runs = new ArrayList<Spoken>();
    Optional<Steps> run = Optional.empty();
    for (StepVerdicts step : steps) {
      if (step.verdicts().stream().anyMatch(verdict -> verdict.rule() == rule)) {
        Volume from = run.map(Steps::from).orElse(step.volume());
        run = Optional.of(new Steps(from, step.volume()));
      } else {
        run.ifPresent(over -> runs.add(new Spoken(Part.STEP, rule.name(), Optional.of(over))));
        run = Optional.empty();
      }
    }
    run.ifPresent(over -> runs.add(new Spoken(Part.STEP, rule.name(), Optional.of(over))));
    return runs;
  }

  boolean isSameDecisionAs(DecisionValues other) {
    return kind == other.kind && volume.equals(other.volume);
  }

  private List<Spoken> ofReasons(boolean wanted) {
    return spoken.stream().filter(one -> (one.part() == Part.REASON) == wanted).toList();
  }

  /** In what another advice differs from this one, but for its words and its engine. */
  List<Difference> differencesTo(DecisionValues other) {
    var found = new ArrayList<Difference>();
    Difference.of(Difference.Kind.DECISION, kind, other.kind).ifPresent(found::add);
    Difference.of(Difference.Kind.VOLUME, volume, other.volume).ifPresent(found::add);
    Difference.of(Difference.Kind.REASONS, ofReasons(true), other.ofReasons(true))
        .ifPresent(found::add);
    Difference.of(Difference.Kind.VERDICTS, ofReasons(false), other.ofReasons(false))
        .ifPresent(found::add);
    Difference.of(Difference.Kind.NOT_BEFORE, notBefore, other.notBefore).ifPresent(found::add);
    Difference.of(Difference.Kind.CHOICE, choice, other.choice).ifPresent(found::add);
    Difference.of(Difference.Kind.PROTOCOL, protocol, other.protocol).ifPresent(found::add);
    return found;
  }
}
