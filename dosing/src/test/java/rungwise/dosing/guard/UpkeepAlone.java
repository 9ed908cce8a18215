package rungwise.dosing.guard;

import static rungwise.dosing.LabelWorld.ml;
import static rungwise.dosing.guard.EachGuardAloneTest.LATER;
import static rungwise.dosing.guard.EachGuardAloneTest.home;
import static rungwise.dosing.guard.EachGuardAloneTest.inClinic;
import static rungwise.dosing.guard.EachGuardAloneTest.usual;
import static rungwise.dosing.history.Circumstances.Halt.Kind.ENDED;
import static rungwise.dosing.history.Circumstances.Halt.Kind.PAUSED;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.guard.EachGuardAloneTest.Alone;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.source.Sourced;

/** The guards of what has changed or run out, each in a case in which it alone blocks. */
final class UpkeepAlone {

  private UpkeepAlone() {}

  static List<Alone> cases() {
    return List.of(
        new Alone(GuardRule.SIGNED_BEFORE_FINDING, UpkeepAlone::signedBeforeTheFinding),
        new Alone(
            GuardRule.RECORD_NOT_SOUND,
            () ->
                home(
                    usual().around(Circumstances.NONE.withFlaws(List.of("entry 3 was changed"))),
                    "0.25")),
        new Alone(
            GuardRule.CLOCK_NOT_KNOWN,
            () ->
                home(
                    usual().around(Circumstances.NONE.withoutClock("it jumped by 1 day")), "0.25")),
        new Alone(GuardRule.COURSE_PAUSED, () -> home(usual().around(halted(PAUSED)), "0.25")),
        new Alone(GuardRule.COURSE_ENDED, () -> home(usual().around(halted(ENDED)), "0.25")),
        new Alone(
            GuardRule.RECALLED,
            () -> home(usual().around(Circumstances.NONE.withRecall()), "0.25")),
        new Alone(
            GuardRule.EXAMINATION_OVERDUE,
            () -> inClinic(usual().examined(Optional.empty()), "0.5")),
        new Alone(
            GuardRule.EXAMINATION_LONG_OVERDUE,
            () -> home(usual().examined(Optional.empty()), "0.25")),
        new Alone(GuardRule.LAPSED, () -> home(lapsed(usual()), "0.25")),
        new Alone(GuardRule.ABOVE_BEFORE_LAPSE, () -> inClinic(lapsed(usual()), "0.5")),
        new Alone(
            GuardRule.NEWER_VERSION_FORBIDS,
            () ->
                home(usual().around(Circumstances.NONE.withNewer(List.of(upTo("2.5")))), "0.25")));
  }

  /** The same over a year later, with a screening of then. */
  static LabelWorld lapsed(LabelWorld world) {
    return world
        .screened(Screening.all(Answer.NO, LATER.plus(Duration.ofDays(400))))
        .at(LATER.plus(Duration.ofDays(400)));
  }

  /** The label with a lower maximum, in mcg of alprostadil. */
  static Protocol upTo(String mcg) {
    Protocol label = LabelWorld.protocol();
    return new Protocol(
        label.name(),
        2,
        label.title(),
        false,
        label.components(),
        label.starts(),
        label.steps(),
        label.strengths(),
        new Sourced<>(LabelWorld.mcg(mcg), label.ceiling().source()),
        label.limits(),
        label.more());
  }

  private static Clearance signedBeforeTheFinding() {
    Question question = usual().around(Circumstances.NONE.withFound(8)).question();
    var signed = new SignedDose(ml("0.25"), Place.HOME, Set.of(), Optional.empty(), 7);
    return Dosing.mayInject(question, Optional.of(signed));
  }

  private static Circumstances halted(Circumstances.Halt.Kind kind) {
    return Circumstances.NONE.withHalt(new Circumstances.Halt(kind, LATER));
  }
}
