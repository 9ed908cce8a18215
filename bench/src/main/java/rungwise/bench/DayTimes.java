package rungwise.bench;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.TemporaryFolder;

/**
 * What the day's list, once every row is made, and a course page cost by the number of courses, in
 * processor time of this whole process, the reading visitor included: {@code DayTimes 90 990}.
 */
public final class DayTimes {

  private static final long SEED = 20_261_130;
  private static final int WARM = 8;
  private static final int TIMES = 15;
  private static final double NANOSECONDS = 1e6;
  private static final String COMPUTED = "eing computed";
  private static final String LAST = "/?page=999999";
  private static final long SECOND = 1_000_000_000;

  private DayTimes() {}

  /** Prints one line for each number of courses made beside those of the invented clinic. */
  public static void main(String... numbers) {
    var out = new PrintStream(System.out, /* autoFlush= */ true, StandardCharsets.UTF_8);
    for (String number : numbers) {
      try (TemporaryFolder folder = TemporaryFolder.make()) {
        long began = System.nanoTime();
        ManyCourses.fill(folder.path(), Integer.parseInt(number), SEED);
        out.println(number + " courses made in " + (System.nanoTime() - began) / SECOND + " s");
        measure(folder, out);
      }
    }
  }

  private static void measure(TemporaryFolder folder, PrintStream out) {
    try (OpenClinic clinic = OpenClinic.in(folder.path(), InstantSource.system());
        RunningServer server =
            RunningServer.start(
                ServerSettings.of(
                    ServerSettings.LOOPBACK,
                    0,
                    Optional.empty(),
                    "Northgate Clinic",
                    ZoneOffset.UTC),
                clinic)) {
      DemoClinic.Member prescriber = DemoClinic.MEMBERS.get(1);
      var visitor = new Visitor(server.uri());
      visitor.send(
          "/sign-in",
          Map.of("signInName", prescriber.signInName(), "password", prescriber.password()));
      while (visitor.read("/").contains(COMPUTED) || visitor.read(LAST).contains(COMPUTED)) {
        LockSupport.parkNanos(SECOND);
      }
      String list = visitor.read("/");
      int at = list.lastIndexOf("href=\"/courses/") + "href=\"".length();
      String course = list.substring(at, list.indexOf('"', at));
      out.println("list of " + list.length() + " characters");
      out.println("Today        " + figures(() -> visitor.read("/")));
      out.println("course page  " + figures(() -> visitor.read(course)));
    }
  }

  private static String figures(Supplier<String> page) {
    long read = 0;
    for (int time = 0; time < WARM; time++) {
      read += page.get().length();
    }
    List<Double> walls = new ArrayList<>();
    long before = processorNanoseconds();
    for (int time = 0; time < TIMES; time++) {
      long began = System.nanoTime();
      read += page.get().length();
      walls.add((System.nanoTime() - began) / NANOSECONDS);
    }
    double each = (processorNanoseconds() - before) / NANOSECONDS / TIMES;
    Collections.sort(walls);
    return Math.round(each)
        + " ms of processor time, median "
        + Math.round(walls.get(TIMES / 2))
        + " ms on the clock, longest "
        + Math.round(walls.getLast())
        + " ms, "
        + read / (WARM + TIMES)
        + " characters";
  }

  private static long processorNanoseconds() {
    var bean =
        (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return bean.getProcessCpuTime();
  }
}
