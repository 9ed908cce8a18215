package rungwise.checks.adversary.law;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import rungwise.dosing.screening.Condition;

/** Who said what and when, in plain minutes and microlitres, and what follows from it. */
public final class Ledger {

  public static final long DAY = 24 * 60;
  public static final long WEEK = 7 * DAY;

  /** A plan that was chosen. */
  public record Chosen(long entry, long minute, Mix mix, String barrel, Rulebook rules) {}

  /** A dose that was signed; next is 0 where no step may follow, until ends some overrides. */
  public record Signed(
      long entry,
      long minute,
      Mix mix,
      long volume,
      boolean atHome,
      Set<String> overridden,
      long next,
      String vial,
      long until) {}

  /**
   * A vial, by the entry that it began with.
   *
   * @param made minute of its making; -1 where not said, as for opened
   * @param label the last day that the label says, from 1970
   * @param days of use once opened that the label says; 0 where it does not
   */
  public record Vial(
      String root,
      String entry,
      long number,
      Mix mix,
      long made,
      long label,
      long opened,
      int days) {

    /** The last day of a dose of a mixture from it. */
    long lastDay(Mix planned) {
      long open = Minutes.dayOf(opened);
      long last = label;
      if (opened >= 0 && days > 0) {
        last = Math.min(last, open + days);
      }
      return opened >= 0 && planned.daysOpen > 0 ? Math.min(last, open + planned.daysOpen) : last;
    }

    /** Opened, and nobody has said for how long it may be used. */
    boolean isNotStated(Mix planned) {
      return opened >= 0 && days == 0 && planned.daysOpen == 0;
    }
  }

  /** A prescriber's review; seenSoft where he wrote that the end cannot be known. */
  public record Reviewed(long entry, boolean seenSoft) {}

  /** A prescriber's opening of a volume. */
  public record Reopened(long entry, Mix mix, long upTo) {}

  /** An injection in the clinic of which nobody has written how it ended. */
  public record Watched(String id, long at, Mix planned, long drawn, long ordered, String vial) {}

  /** What may mean 4 hours and was asked back, with the report that it was about. */
  public record Worry(long entry, long at, String about) {}

  /** The last answer of one question. */
  public record Answered(String answer, long minute) {}

  /** A line of a history from before this record that has no time. */
  public record Before(long entry, long drawn, long lasted) {}

  public final List<Told> told = new ArrayList<>();
  public final List<Chosen> plans = new ArrayList<>();
  public final List<Signed> orders = new ArrayList<>();
  public final List<Vial> vials = new ArrayList<>();
  public final List<Reviewed> reviews = new ArrayList<>();
  public final List<Reopened> reopened = new ArrayList<>();
  public final List<Worry> worries = new ArrayList<>();
  public final List<Watched> watched = new ArrayList<>();
  public final Map<Condition, Answered> answers = new EnumMap<>(Condition.class);

  /** A contraindication or a condition to decide on, from the yes until a prescriber's word. */
  public final Map<Condition, Long> standing = new EnumMap<>(Condition.class);

  public final Map<Condition, Long> decided = new EnumMap<>(Condition.class);
  public final Map<String, Long> ready = new HashMap<>();
  public final List<Before> before = new ArrayList<>();
  public final Set<Mix> recalled = EnumSet.noneOf(Mix.class);
  public final Watch watch = new Watch();
  public long examined = -1;

  /** The entry of an examination that found curvature or scarring; 0 where none did. */
  public long found;

  /** The entry of the last examination that found none after one that did. */
  public long foundNoMore;

  /** Whether the report that was written or withdrawn last was so by a prescriber. */
  public boolean lastByPrescriber;

  public Chosen plan() {
    return plans.getLast();
  }

  /** The plan of an instant; the first for one before it. */
  public Chosen planAt(long minute) {
    Chosen then = plans.getFirst();
    for (Chosen one : plans) {
      if (one.minute() <= minute) {
        then = one;
      }
    }
    return then;
  }

  /** The dose that is in force. */
  public Optional<Signed> order() {
    return orders.isEmpty() || orders.getLast().entry() < plan().entry()
        ? Optional.empty()
        : Optional.of(orders.getLast());
  }

  /** The dose of a mixture that was in force when a man injected. */
  public Optional<Signed> orderAt(long minute, Mix mix) {
    return orders.stream()
        .filter(one -> one.minute() <= minute && one.mix() == mix)
        .reduce((earlier, later) -> later);
  }

  /** The reports that count, in the order of time. */
  public List<Told> counting() {
    var found = new ArrayList<Told>();
    for (Told one : told) {
      if (one.counts()) {
        found.add(one);
      }
    }
    found.sort(Comparator.comparingLong(Told::at).thenComparingLong(one -> one.entry));
    return found;
  }

  /** What was long or not known how long, struck or not, as long as it binds. */
  List<Told> everLong() {
    return told.stream().filter(Told::isLong).filter(this::stillBinds).toList();
  }

  public Optional<Told> last() {
    List<Told> all = counting();
    return all.isEmpty() ? Optional.empty() : Optional.of(all.getLast());
  }

  /** The injections of a mixture since another one was injected. */
  public List<Told> runOf(Mix mix) {
    List<Told> all = counting();
    int from = all.size();
    while (from > 0 && all.get(from - 1).mix.isSameAs(mix)) {
      from--;
    }
    return all.subList(from, all.size());
  }

  private boolean laterSays(Told struck, Predicate<Told> what) {
    Optional<Told> next = struck.replacedBy;
    while (next.isPresent()) {
      if (what.test(next.get())) {
        return true;
      }
      next = next.get().replacedBy;
    }
    return false;
  }

  private static boolean confirmed(Told one) {
    return one.confirmed || one.struckByPrescriber;
  }

  /** What was said before of the injection of a report. */
  List<Told> earlierThan(Told report) {
    return told.stream().filter(one -> laterSays(one, later -> later == report)).toList();
  }

  /** The entry that first told of the injection of a report. */
  public long beganAt(Told report) {
    return earlierThan(report).stream().mapToLong(one -> one.entry).min().orElse(report.entry);
  }

  /** Whether a prescriber struck or confirmed it, or any later one in its chain. */
  private boolean byPrescriber(Told struck) {
    return confirmed(struck) || laterSays(struck, Ledger::confirmed);
  }

  /** A struck report that still closes: neither completed nor confirmed. */
  public boolean stillBinds(Told one) {
    return one.counts() || (!byPrescriber(one) && !laterSays(one, later -> later.completes(one)));
  }

  /** Emergencies that stop everything until a prescriber's review, one for each injection. */
  public List<Told> emergencies() {
    var open = new ArrayList<Told>();
    for (Told one : told) {
      boolean told = one.mayReach(240) && !isReviewed(one) && !isLifted(one);
      if (told && !laterSays(one, later -> later.mayReach(240))) {
        open.add(one);
      }
    }
    return open;
  }

  private boolean isReviewed(Told one) {
    return reviews.stream()
        .anyMatch(review -> review.entry() > one.entry && (review.seenSoft() || !one.isEndOpen()));
  }

  /** Those who left while it was firm, of whom nobody knows more and whom nobody on call has. */
  public List<Told> leftWhileFirm() {
    return counting().stream()
        .filter(one -> one.observed && one.isEndOpen() && !isReviewed(one))
        .filter(one -> !watch.handed.contains(beganAt(one)))
        .toList();
  }

  /** Reviewed emergencies of which the end will never be known. */
  List<Told> neverKnown() {
    return told.stream().filter(one -> one.counts() && one.isEndOpen() && isReviewed(one)).toList();
  }

  /** Worries that no report has answered since and no prescriber has reviewed. */
  List<Worry> openWorries() {
    return worries.stream()
        .filter(one -> reviews.stream().noneMatch(review -> review.entry() > one.entry()))
        .filter(one -> told.stream().noneMatch(report -> answers(report, one)))
        .toList();
  }

  private boolean answers(Told report, Worry worry) {
    boolean same = report.at() == worry.at();
    return report.entry > worry.entry()
        && (same || earlierThan(report).stream().anyMatch(one -> one.id.equals(worry.about())));
  }

  /** The first review that covers a report. */
  long reviewedBy(Told one) {
    return reviews.stream()
        .filter(review -> review.entry() > one.entry && (review.seenSoft() || !one.isEndOpen()))
        .mapToLong(Reviewed::entry)
        .findFirst()
        .orElse(Told.NO_END);
  }

  private boolean isLifted(Told one) {
    if (one.counts()) {
      return false;
    }
    if (one.saysFourHours()) {
      return one.confirmed || laterSays(one, later -> later.confirmed);
    }
    return byPrescriber(one) || laterSays(one, Told::endsBeforeFourHours);
  }

  /** What keeps a volume closed. */
  public Optional<Told> closing(Mix mix, long volume) {
    for (Told one : told) {
      if (one.mayReach(120)
          && mix.reaches(volume, one.mix, one.drawn())
          && stillBinds(one)
          && !isReopened(one.entry, mix, volume)) {
        return Optional.of(one);
      }
    }
    return Optional.empty();
  }

  private boolean isReopened(long entry, Mix mix, long volume) {
    return reopened.stream()
        .anyMatch(one -> one.entry() > entry && one.mix().isSameAs(mix) && volume <= one.upTo());
  }

  /** What forbids a volume because less of it was long. */
  public Optional<Told> longBelow(Mix mix, long volume) {
    List<Told> all = counting();
    for (Told one : all) {
      if (one.isLong()
          && mix.passes(volume, one.mix, one.drawn())
          && all.stream().noneMatch(other -> answers(one, other))) {
        return Optional.of(one);
      }
    }
    return Optional.empty();
  }

  private static boolean answers(Told one, Told later) {
    return later.at() > one.at()
        && later.proves()
        && later.mix.reaches(later.drawn(), one.mix, one.drawn());
  }

  /** The injections, watched ones too, within a span before and after a minute, ends left out. */
  public List<Long> within(long span, long minute) {
    var found = new ArrayList<Long>();
    for (Told one : told) {
      if (one.counts() && Math.abs(one.at() - minute) < span) {
        found.add(one.at());
      }
    }
    found.sort(Comparator.naturalOrder());
    return found;
  }

  /** The most injections in any open window of that length that holds the minute. */
  public int mostAround(long span, long minute) {
    List<Long> near = within(span, minute);
    int most = 0;
    for (long from : near) {
      if (from <= minute) {
        most =
            Math.max(
                most, (int) near.stream().filter(at -> at >= from && at < from + span).count());
      }
    }
    return Math.max(most, (int) near.stream().filter(at -> at >= minute).count());
  }

  /** The vial that was written down last. */
  public Optional<Vial> vial() {
    return vials.isEmpty() ? Optional.empty() : Optional.of(vials.getLast());
  }

  /** The same where nobody knows from which vial, by another label that he had by then. */
  public Optional<Told> closingBesides(Mix mix, long volume) {
    for (Told one : counting()) {
      if (one.mayReach(120)
          && besides(one).stream().anyMatch(other -> mix.reaches(volume, other, one.drawn()))
          && !isReopened(one.entry, mix, volume)) {
        return Optional.of(one);
      }
    }
    return Optional.empty();
  }

  /** What a report may have been besides, from nobody knows which vial; none of one from before. */
  List<Mix> besides(Told one) {
    return one.vialKnown || one.id.isEmpty()
        ? List.of()
        : vials.stream()
            .filter(vial -> vial.number() < beganAt(one))
            .map(Vial::mix)
            .filter(other -> !other.isSameAs(one.mix))
            .toList();
  }

  /** The same of the mixture that was injected last of those that have any. */
  public List<Told> lastTolerated() {
    return counting().reversed().stream()
        .map(one -> tolerated(one.mix))
        .filter(some -> !some.isEmpty())
        .findFirst()
        .orElse(List.of());
  }

  /** The doses of a mixture that prove something, with no long one at as much or less. */
  public List<Told> tolerated(Mix mix) {
    return counting().stream()
        .filter(one -> one.mix.isSameAs(mix) && one.proves())
        .filter(one -> everLong().stream().noneMatch(other -> reachesAny(one, other)))
        .toList();
  }

  private boolean reachesAny(Told one, Told other) {
    return one.mix.reaches(one.drawn(), other.mix, other.drawn())
        || besides(other).stream()
            .anyMatch(mix -> one.mix.reaches(one.drawn(), mix, other.drawn()));
  }

  /** The mixture that he was injected with before the present run of another one. */
  public Optional<Mix> mixBefore(Mix mix) {
    List<Told> all = counting();
    return all.reversed().stream()
        .map(one -> one.mix)
        .filter(one -> !one.isSameAs(mix))
        .findFirst();
  }
}
