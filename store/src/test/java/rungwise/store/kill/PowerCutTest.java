package rungwise.store.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseEntry;
import rungwise.store.SqliteStore;

/**
 * The power fails while the use cases write: of what was not yet forced to the disk any sectors are
 * there and any are not. Each time the store must open, its chain must be whole, and everything
 * that was acknowledged must be there. Where the disk itself had lost what it said it kept, that is
 * told.
 *
 * <p>What was forced is taken from the order of SQLite in write-ahead mode with full
 * synchronisation (sqlite.org/wal.html): the log before a commit ends, the database before the log
 * begins again. {@code ./check kills N SEED} cuts more often.
 */
final class PowerCutTest {

  private static final int CUTS = Integer.getInteger("rungwise.kills", 60);
  private static final long SEED = Long.getLong("rungwise.seed", 20260302);
  private static final int CUTS_OF_ONE_FOLDER = 50;
  private static final int CUTS_OF_ONE_LOSS = 5;
  private static final int MOST_WRITES_BETWEEN = 6;

  private static final long LONGEST_WRITE = TimeUnit.MILLISECONDS.toNanos(20);

  @TempDir Path top;

  private final Random random = new Random(SEED);
  private final Map<Long, String> acknowledged = new HashMap<>();
  private Path folder = Path.of("");
  private int cuts;
  private int underWay;
  private int losses;
  private int all;
  private int writesLeft;
  private long began = System.nanoTime();
  private @Nullable Disk forced;
  private @Nullable CompletableFuture<Disk> copying;

  @Test
  @Tag("long")
  void whatever_was_acknowledged_is_there_after_the_power_failed() throws Exception {
    while (cuts < CUTS) {
      int until = Math.min(CUTS, cuts + CUTS_OF_ONE_FOLDER);
      folder = Files.createDirectory(top.resolve("live-" + cuts));
      forgetFolder();
      try (var store = SqliteStore.open(folder)) {
        var writer = new WriterUnderFire(store, /* first= */ 0, this::acknowledge);
        while (cuts < until) {
          writer.writeCourse();
        }
      }
      all += acknowledged.size();
    }

    System.out.printf(
        "%d power cuts, seed %d: %d with something written and not acknowledged, %d disks that had"
            + " lost it; %d writes acknowledged, all of them there or told%n",
        cuts, SEED, underWay, losses, all);
    assertThat(cuts).isGreaterThanOrEqualTo(CUTS);
    assertThat(underWay).isGreaterThan(CUTS / 4);
    assertThat(losses).isGreaterThanOrEqualTo(CUTS / 10);
  }

  /** A cut that is still awaited is of the folder before, and is dropped with it. */
  private void forgetFolder() {
    forced = null;
    copying = null;
    acknowledged.clear();
  }

  /**
   * Between two writes; while a cut is awaited, the next one goes on until this is called again.
   */
  private void acknowledge(CourseEntry entry) {
    long took = Math.min(LONGEST_WRITE, System.nanoTime() - began);
    try {
      if (copying != null) {
        Disk written = copying.join();
        copying = null;
        assertNothingLost(written);
      }
      acknowledged.put(entry.number(), entry.id().text());
      if (writesLeft-- == 0) {
        writesLeft = random.nextInt(MOST_WRITES_BETWEEN);
        beginCut(random.nextLong(took + 1));
      }
      began = System.nanoTime();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private void beginCut(long wait) throws IOException {
    Disk before = forced;
    forced = Disk.of(folder);
    if (before != null && cuts % CUTS_OF_ONE_LOSS == 0 && forced.isAheadOf(before)) {
      losses++;
      Kept.assertLossIsTold(image(Disk.lost(before, forced)), "loss before cut " + cuts);
    }
    copying =
        CompletableFuture.supplyAsync(
            () -> {
              LockSupport.parkNanos(wait);
              return copied();
            });
  }

  private Disk copied() {
    try {
      return Disk.of(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void assertNothingLost(Disk written) throws IOException, SQLException {
    Disk before = Objects.requireNonNull(forced);
    underWay += written.isAheadOf(before) ? 1 : 0;
    Path image = image(Disk.cut(before, written, random));
    Kept.assertWhole(image, acknowledged, "cut " + cuts + ", seed " + SEED);
    cuts++;
  }

  private Path image(Disk disk) throws IOException {
    Path image = Files.createTempDirectory(top, "image");
    disk.putInto(image);
    return image;
  }
}
