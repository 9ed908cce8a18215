package rungwise.checks.adversary;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import rungwise.checks.adversary.law.AdviceLaws;
import rungwise.checks.adversary.law.AuthorityLaws;
import rungwise.checks.adversary.law.CourseLaws;
import rungwise.checks.adversary.law.DoseLaws;
import rungwise.checks.adversary.law.Judge;
import rungwise.checks.adversary.law.Law;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.checks.adversary.law.NowLaws;
import rungwise.checks.adversary.law.Scene;
import rungwise.checks.adversary.law.Told;
import rungwise.checks.adversary.law.TransferLaws;
import rungwise.checks.adversary.law.UpkeepLaws;
import rungwise.checks.adversary.law.WatchLaws;

/** One man's record: each act is done, and the laws are asked after it. */
final class Life {

  /** Noon of 2 March 2026. */
  static final long START = 29_540_880;

  /** One of so many times the laws are asked where little can have changed. */
  private static final int SELDOM = 4;

  private static final long LONGEST_LOOK_AHEAD = 10 * Ledger.DAY;

  private final Actor actor;
  private final Reporter reporter;
  private final Visitor visitor;
  private final Clerk clerk;
  private final Watcher watcher;
  private final Caller caller;
  private final Stander stander;
  private final Receiver receiver;
  private final Telephonist telephonist;
  private final Judge judge;
  private final List<String> history = new ArrayList<>();
  private Optional<Scene> last = Optional.empty();

  private Life(House house, Judge judge) {
    this.judge = judge;
    this.actor = new Actor(house, new Ledger(), judge);
    this.reporter = new Reporter(actor);
    this.visitor = new Visitor(actor, reporter);
    this.clerk = new Clerk(actor);
    this.watcher = new Watcher(actor);
    this.caller = new Caller(actor);
    this.stander = new Stander(actor);
    this.receiver = new Receiver(actor);
    this.telephonist = new Telephonist(actor);
  }

  /** A record that broke a law. */
  record Broken(Judge.Breach breach, List<String> history, int acts) {}

  /** Lives a record until a law is broken. */
  static Optional<Broken> live(House house, Judge judge, List<Act> acts) {
    var life = new Life(house, judge);
    life.actor.now = START;
    house.setClock(START);
    int done = 0;
    boolean goesOn = true;
    while (goesOn && done < acts.size()) {
      goesOn = life.goesOnAfter(acts.get(done));
      done++;
    }
    int count = done;
    return judge.takeBreach().map(breach -> new Broken(breach, List.copyOf(life.history), count));
  }

  private boolean goesOnAfter(Act act) {
    try {
      step(act);
    } catch (RuntimeException thrown) {
      history.add("  no answer: " + thrown);
      judge.fail(Law.ALWAYS_ANSWERS, String.valueOf(thrown.getMessage()));
      return false;
    }
    return !judge.isBroken() && !actor.ledger.plans.isEmpty();
  }

  private void step(Act act) {
    actor.now += act.after();
    actor.house.setClock(actor.now);
    var random = new SplittableRandom(act.dice());
    if (act.kind() == Act.Kind.OPEN) {
      say(actor.open(random));
      return;
    }
    long entries = actor.house.memory.lastNumber();
    int told = actor.ledger.told.size();
    Optional<Scene> before = last;
    say(act(act, random));
    boolean isNew =
        actor.house.memory.lastNumber() > entries
            || act.kind() == Act.Kind.RECALL
            || act.kind() == Act.Kind.SOUNDNESS;
    if ((!isNew || isPrologue()) && random.nextInt(SELDOM) > 0) {
      last = isNew ? Optional.empty() : last; // what was written since is not of the next act
      return;
    }
    Scene after = scene(actor.now);
    last = Optional.of(after);
    judge.look(Law.ALWAYS_ANSWERS, true);
    before.ifPresent(one -> new AuthorityLaws(one, after, judge).check(byPrescriber(act), told));
    laws(after);
    look(random, after);
  }

  private boolean byPrescriber(Act act) {
    return switch (act.kind()) {
      case REPORT, CORRECT, WITHDRAW -> actor.ledger.lastByPrescriber;
      case SIGN, REVIEW, REOPEN, PLAN, DECIDE, OVERTURN, CONFIRM -> true;
      default -> false;
    };
  }

  /** Nothing was signed or injected yet. */
  private boolean isPrologue() {
    return actor.ledger.orders.isEmpty() && actor.ledger.told.isEmpty();
  }

  private Scene scene(long minute) {
    return Scene.of(actor.ledger, minute, actor.house.ask(minute));
  }

  private void laws(Scene scene) {
    new CourseLaws(scene, judge).check();
    new DoseLaws(scene, judge).check();
    new AdviceLaws(scene, judge).check();
    new NowLaws(scene, judge).check();
    new UpkeepLaws(scene, judge).check();
    new TransferLaws(scene, judge).check();
    new WatchLaws(scene, judge).check();
    if (judge.isBroken()) {
      history.add("  " + Minutes.local(scene.minute()) + ": " + scene.words());
    }
  }

  /** Some other minute: later, at the edge of a rule, or before something that is on record. */
  private void look(SplittableRandom random, Scene now) {
    if (judge.isBroken() || actor.ledger.order().isEmpty() || random.nextBoolean()) {
      return;
    }
    List<Told> all = actor.ledger.counting();
    long edge = all.isEmpty() ? now.minute() : all.get(random.nextInt(all.size())).at();
    long minute =
        switch (random.nextInt(4)) {
          case 0 -> edge + Ledger.DAY - 1 + random.nextInt(3);
          case 1 -> edge + Ledger.WEEK - 1 + random.nextInt(3);
          case 2 -> edge + random.nextInt(90);
          default -> now.minute() + random.nextLong(LONGEST_LOOK_AHEAD);
        };
    if (minute < START) {
      return;
    }
    Scene other = scene(minute);
    if (minute >= now.minute()) {
      laws(other);
      return;
    }
    new NowLaws(other, judge).time();
    if (judge.isBroken()) {
      history.add("  asked for " + Minutes.local(minute) + ": " + other.words());
    }
  }

  private void say(String words) {
    if (!words.isEmpty()) {
      history.add(Minutes.local(actor.now) + " " + words);
    }
  }

  private String act(Act act, SplittableRandom random) {
    return switch (act.kind()) {
      case OPEN -> "";
      case SCREEN_ALL -> clerk.screenAll();
      case PAST -> clerk.past(random);
      case REPORT -> reporter.report(random);
      case CORRECT -> reporter.correct(random);
      case WITHDRAW -> reporter.withdraw(random);
      case CONFIRM -> actor.confirm(random);
      case VISIT -> visitor.visit(random);
      case VISIT_START -> visitor.visitStart(random);
      case VISIT_END -> visitor.visitEnd(random);
      case SIGN -> actor.sign(random);
      case REVIEW -> actor.review(random);
      case REOPEN -> actor.reopen(random);
      case VIAL -> clerk.vial(random);
      case AMEND_VIAL -> clerk.amendVial(random);
      case VIAL_FATE -> clerk.vialFate(random);
      case PLAN -> actor.plan(random);
      case ANSWER -> clerk.answer(random);
      case STILL_TRUE -> clerk.stillTrue();
      case DECIDE -> clerk.decide(random);
      case OVERTURN -> clerk.overturn(random);
      case EXAMINE -> clerk.examine(random);
      case READY -> clerk.ready(act.dice());
      case RECALL -> clerk.recall();
      case NOT_ALLOWED -> actor.notAllowed(random);
      case TABLET -> watcher.tablet(random);
      case SEE_FLAGS -> watcher.seeFlags(random);
      case SOUNDNESS -> watcher.toggleSoundness(reporter);
      case HAND_OVER -> watcher.handOver();
      case CLOSE_DAY -> watcher.closeDay();
      case UNDO -> watcher.undo();
      case CALL -> caller.call(random);
      case STAND -> stander.stand(random);
      case TRANSFER -> receiver.transfer(random);
      case REACH -> telephonist.reach(random);
    };
  }
}
