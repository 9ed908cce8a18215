package rungwise.checks.adversary;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicLong;
import rungwise.checks.adversary.law.Judge;
import rungwise.checks.adversary.law.Law;

/**
 * Makes records by the thousand and asks the laws after each entry.
 *
 * <p>From the command line: how many records, the first seed, how many threads, and the laws that
 * are looked at if not all are.
 */
public final class Adversary {

  private static final int MOST_SHOWN = 20;

  private Adversary() {}

  /** A record that broke a law, as short as it could be made. */
  record Found(long seed, Life.Broken broken) {
    @Override
    public String toString() {
      return "seed "
          + seed
          + " breaks "
          + broken.breach().law()
          + " ("
          + broken.breach().law().words
          + "): "
          + broken.breach().words()
          + "\n    "
          + String.join("\n    ", broken.history());
    }
  }

  /** What a run found, and how often each law was looked at. */
  record Run(List<Found> found, Judge judge, long records, long milliseconds) {

    String table() {
      var lines = new ArrayList<String>();
      lines.add(String.format("%,d records in %,d ms", records, milliseconds));
      for (Law law : Law.values()) {
        lines.add(
            String.format(
                "%14d looked %8d broken  %s%s",
                judge.looked(law),
                judge.broken(law),
                law,
                Law.AWAITED.contains(law) ? " (awaited)" : ""));
      }
      return String.join("\n", lines);
    }
  }

  /** Runs that many records from a seed on. */
  static Run run(long records, long firstSeed, int threads, Set<Law> awaited) {
    long began = System.nanoTime();
    var next = new AtomicLong();
    var found = new ConcurrentSkipListMap<Long, Found>();
    var all = new Judge(awaited);
    var workers = new ArrayList<Thread>();
    for (int i = 0; i < threads; i++) {
      workers.add(
          Thread.ofPlatform()
              .start(
                  () -> {
                    Judge judge = work(records, firstSeed, next, found, awaited);
                    synchronized (all) {
                      all.add(judge);
                    }
                  }));
    }
    workers.forEach(Adversary::join);
    long taken = (System.nanoTime() - began) / 1_000_000;
    return new Run(List.copyOf(found.values()), all, Math.min(records, next.get()), taken);
  }

  private static Judge work(
      long records,
      long firstSeed,
      AtomicLong next,
      ConcurrentSkipListMap<Long, Found> found,
      Set<Law> awaited) {
    var judge = new Judge(awaited);
    var house = new House();
    long one = next.getAndIncrement();
    while (one < records && found.size() < MOST_SHOWN) {
      long seed = firstSeed + one;
      Optional<Life.Broken> broken = Life.live(house, judge, Act.record(seed));
      if (broken.isPresent()) {
        found.put(
            seed, new Found(seed, Shrinker.shrink(house, Act.record(seed), broken.get(), awaited)));
      }
      one = next.getAndIncrement();
    }
    return judge;
  }

  private static void join(Thread worker) {
    try {
      worker.join();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(interrupted);
    }
  }

  /** Every law but some, by their names with commas between; "none" for all. */
  private static Set<Law> allBut(String names) {
    var awaited = EnumSet.allOf(Law.class);
    if (!names.equals("none")) {
      List.of(names.split(",", -1)).forEach(name -> awaited.remove(Law.valueOf(name)));
    }
    return awaited;
  }

  /** Prints the table and every record that broke a law; 1 if there was one. */
  public static void main(String[] args) {
    long records = args.length > 0 ? Long.parseLong(args[0]) : 20_000;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    int threads =
        args.length > 2 ? Integer.parseInt(args[2]) : Runtime.getRuntime().availableProcessors();
    Set<Law> awaited = args.length > 3 ? allBut(args[3]) : Law.AWAITED;
    Run run = run(records, seed, threads, awaited);
    System.out.println(run.table());
    run.found().forEach(System.out::println);
    System.exit(run.found().isEmpty() ? 0 : 1);
  }
}
