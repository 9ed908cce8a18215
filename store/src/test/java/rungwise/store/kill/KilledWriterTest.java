package rungwise.store.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A process that writes through the use cases is killed (SIGKILL) at random moments: while it opens
 * the folder for the first time, while it opens it again, while it writes. Each time the store must
 * open, its chain must be whole, and everything that was acknowledged must be there.
 *
 * <p>{@code ./check kills N SEED} kills more often. This shows that the process may die at any
 * moment; {@link PowerCutTest} shows it of the power.
 */
final class KilledWriterTest {

  private static final int KILLS = Integer.getInteger("rungwise.kills", 60);
  private static final long SEED = Long.getLong("rungwise.seed", 20260302);
  private static final int LANES = 2;
  private static final int KILLS_OF_ONE_FOLDER = 10;
  private static final int COURSES_OF_ONE_RUN = 1000;
  private static final int MILLISECONDS_OF_A_START = 900;
  private static final int MILLISECONDS_OF_WRITING = 150;

  @TempDir(factory = OnTheDisk.class)
  Path top;

  /** What all kills of a lane came to. */
  private record Tally(int kills, int duringStart, int acknowledged) {
    Tally plus(Tally other) {
      return new Tally(
          kills + other.kills, duringStart + other.duringStart, acknowledged + other.acknowledged);
    }
  }

  @Test
  @Tag("long")
  void whatever_was_acknowledged_is_there_however_often_the_process_is_killed() throws Exception {
    Path learned = Files.createDirectory(top.resolve("learned"));
    ChildJvm child =
        ChildJvm.prepare(
            Files.createDirectory(top.resolve("child")), List.of(learned.toString(), "0", "2"));

    Tally total = new Tally(0, 0, 0);
    try (var lanes = Executors.newFixedThreadPool(LANES)) {
      List<Callable<Tally>> work = new ArrayList<>();
      for (int lane = 0; lane < LANES; lane++) {
        int number = lane;
        work.add(() -> lane(child, number));
      }
      for (var done : lanes.invokeAll(work)) {
        total = total.plus(done.get());
      }
    }

    System.out.printf(
        "%d kills, seed %d: %d before the first write was acknowledged; %d writes acknowledged,"
            + " all of them there%n",
        total.kills(), SEED, total.duringStart(), total.acknowledged());
    assertThat(total.kills()).isEqualTo(KILLS);
    assertThat(total.acknowledged()).isGreaterThan(KILLS);
    assertThat(total.duringStart()).isBetween(KILLS / 20, KILLS * 3 / 4);
  }

  private Tally lane(ChildJvm child, int lane) throws Exception {
    var random = new Random(SEED + lane);
    int kills = KILLS / LANES + (lane < KILLS % LANES ? 1 : 0);
    var acknowledged = new HashMap<Long, String>();
    int started = 0;
    int all = 0;
    Path folder = top;
    for (int kill = 0; kill < kills; kill++) {
      if (kill % KILLS_OF_ONE_FOLDER == 0) {
        all += acknowledged.size();
        acknowledged.clear();
        folder = Files.createDirectory(top.resolve("lane-" + lane + "-" + kill));
      }
      Map<Long, String> told = killed(child, folder, kill * COURSES_OF_ONE_RUN, random);
      started += told.isEmpty() ? 1 : 0;
      acknowledged.putAll(told);
      Kept.assertWhole(folder, acknowledged, "kill %d of lane %d".formatted(kill, lane));
    }
    return new Tally(kills, started, all + acknowledged.size());
  }

  /** Lets a child write for a while and kills it; gives back what it had acknowledged. */
  private static Map<Long, String> killed(ChildJvm child, Path folder, int from, Random random)
      throws Exception {
    boolean isDuringStart = random.nextInt(4) == 0;
    long wait = random.nextInt(isDuringStart ? MILLISECONDS_OF_A_START : MILLISECONDS_OF_WRITING);
    Process process =
        child.start(
            List.of(
                folder.toString(), Integer.toString(from), Integer.toString(COURSES_OF_ONE_RUN)));
    InputStream out = process.getInputStream();
    var told = new StringBuilder();
    if (!isDuringStart) {
      int first = out.read();
      assertThat(first).as("the child writes").isNotNegative();
      told.append((char) first);
    }
    var rest = Executors.newSingleThreadExecutor();
    try (rest) {
      var reading = rest.submit(() -> new String(out.readAllBytes(), StandardCharsets.US_ASCII));
      TimeUnit.MILLISECONDS.sleep(wait);
      process.toHandle().destroyForcibly(); // the process itself would close its output unread
      process.waitFor();
      return acknowledged(told.append(reading.get()).toString());
    }
  }

  /** The number and the id of each entry; a line that has no end was not yet told. */
  private static Map<Long, String> acknowledged(String told) {
    var found = new HashMap<Long, String>();
    for (String line : told.substring(0, told.lastIndexOf('\n') + 1).lines().toList()) {
      String[] words = line.split(" ", -1);
      assertThat(words[0]).isEqualTo(WriterUnderFire.ACKNOWLEDGED);
      found.put(Long.valueOf(words[1]), words[2]);
    }
    return found;
  }
}
