package rungwise.checks.bytes;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import rungwise.app.server.TemporaryFolder;
import rungwise.checks.bytes.WholeRecord.Change;
import rungwise.clinic.course.CourseId;
import rungwise.store.RecordWatch;
import rungwise.store.SqliteStore;

/**
 * Changes single bytes of a record, opens it as the server does, looks at everything once, and lets
 * the check in the background come to its end. A value that is false may be given out with a word
 * or not at all; of a course at the first look, of anything else before that end.
 *
 * <p>From the command line: how many bytes, and the seed. One in a hundred of them again with a
 * server that is asked for its pages.
 */
public final class ChangedBytes {

  private static final int IN_PROCESS_FOR_ONE_START = 100;

  private final WholeRecord record;

  ChangedBytes(WholeRecord record) {
    this.record = record;
  }

  /** What a run found: how often each outcome, and the changes that ended as none may. */
  record Run(Map<Outcome, Integer> counts, List<Change> failed) {

    String table(String how) {
      var lines = new ArrayList<String>();
      lines.add(how);
      for (Outcome outcome : Outcome.values()) {
        lines.add("%8d %s".formatted(counts.getOrDefault(outcome, 0), outcome.words()));
      }
      failed.forEach(change -> lines.add("         " + change));
      return String.join("\n", lines);
    }
  }

  /** One way to find out what becomes of a change. */
  @FunctionalInterface
  interface Trial {
    Outcome of(Change change, Path folder);
  }

  /** That many changes in this process. */
  Run run(int changes, long seed) {
    return run(changes, seed, this::outcome);
  }

  Run run(int changes, long seed, Trial trial) {
    var random = new Random(seed);
    var counts = new EnumMap<Outcome, Integer>(Outcome.class);
    var failed = new ArrayList<Change>();
    try (TemporaryFolder folder = TemporaryFolder.make()) {
      for (int one = 0; one < changes; one++) {
        Change change = record.change(random);
        Outcome outcome = trial.of(change, folder.path());
        counts.merge(outcome, 1, Integer::sum);
        if (outcome.isFailure()) {
          failed.add(change);
        }
      }
    }
    return new Run(counts, failed);
  }

  /** What becomes of one change. */
  Outcome outcome(Change change, Path folder) {
    record.write(change, folder);
    SqliteStore store;
    try {
      store = SqliteStore.openKnown(folder);
    } catch (RuntimeException notOpened) {
      return Outcome.TOLD_AT_OPENING;
    }
    try (store) {
      return outcome(store);
    }
  }

  private Outcome outcome(SqliteStore store) {
    RecordWatch watch = store.watch();
    boolean isFoundationTold = isTold(watch::lookAtFoundation) || !watch.flaws().isEmpty();
    List<CourseId> known = record.written().courses().keySet().stream().map(CourseId::new).toList();
    Served served = Served.by(store, known);
    boolean isBackgroundTold =
        isTold(
                () -> {
                  if (watch.lookAtAll().isPresent()) {
                    throw new IllegalStateException("told");
                  }
                })
            || !watch.flaws().isEmpty();
    boolean isGone = served.isAnyCourseGone();
    if (served.isAnyCourseFalse(record.written())
        || (isGone && !isFoundationTold)
        || (served.isAnyOtherFalse(record.written()) && !isFoundationTold && !isBackgroundTold)) {
      return Outcome.SERVED_AS_TRUTH;
    }
    if (isFoundationTold || served.isAnyTold()) {
      return Outcome.TOLD_AT_THE_LOOK;
    }
    return isBackgroundTold ? Outcome.TOLD_BY_THE_BACKGROUND : Outcome.UNCHANGED;
  }

  private static boolean isTold(Runnable look) {
    try {
      look.run();
      return false;
    } catch (RuntimeException told) {
      return true;
    }
  }

  /**
   * Prints how often each outcome came, every change that ended as none may, and a last line with
   * the counts; 1 if there is any.
   */
  public static void main(String[] args) {
    int changes = args.length > 0 ? Integer.parseInt(args[0]) : 10_000;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    int starts = args.length > 2 ? Integer.parseInt(args[2]) : changes / IN_PROCESS_FOR_ONE_START;
    WholeRecord record = WholeRecord.told();
    var bytes = new ChangedBytes(record);
    Run run = bytes.run(changes, seed);
    System.out.println(run.table(changes + " bytes changed, seed " + seed));
    Run started = bytes.run(starts, seed, new RealStart(record)::outcome);
    System.out.println(
        started.table(starts + " bytes changed, each with a server that is started"));
    int failed = run.failed().size() + started.failed().size();
    System.out.println(
        "%d changes, %d real starts, seed %d: %d failed".formatted(changes, starts, seed, failed));
    System.exit(failed == 0 ? 0 : 1);
  }
}
