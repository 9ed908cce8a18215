package rungwise.bench;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import rungwise.app.clock.ClockSettings;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;

/**
 * How long 1, 10 and 50 people wait who read and write in a clinic of many courses, 3 to 10 seconds
 * between two pages, and once 10 who never wait: {@code ManyPeople FOLDER COURSES SECONDS}. The
 * folder is filled if it is not there, and kept.
 */
public final class ManyPeople {

  private static final long SEED = 20_261_130;
  private static final long SECOND = 1_000_000_000;
  private static final double MILLISECOND = 1e6;
  private static final int LEAST_WAIT = 3_000;
  private static final int MOST_WAIT = 10_000;
  private static final int COURSES_KNOWN = 2_000;
  private static final int BESIDE_PAGES = 20;
  private static final Pattern COURSE = Pattern.compile("href=\"(/courses/[0-9a-f-]{36})\"");
  private static final Pattern SIGN =
      Pattern.compile(
          "name=\"basis\" value=\"(\\d+)\">\\s*<input type=\"hidden\" name=\"volume\""
              + " value=\"(\\d+)\">\\s*<input type=\"hidden\" name=\"place\" value=\"(\\w+)\"");
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final PrintStream OUT =
      new PrintStream(System.out, /* autoFlush= */ true, StandardCharsets.UTF_8);

  /** What one of them does; how often of a hundred times. */
  private enum Doing {
    TODAY(30),
    SEARCH(20),
    COURSE(30),
    REPORT(12),
    SIGN(8);

    private final int often;

    Doing(int often) {
      this.often = often;
    }
  }

  private final RunningServer server;
  private final List<String> courses = new ArrayList<>();
  private final AtomicLong visiting = new AtomicLong();

  private ManyPeople(RunningServer server) {
    this.server = server;
  }

  /** Prints the times of each number of people. */
  public static void main(String... words) throws Exception {
    Path folder = Path.of(words[0]);
    int seconds = Integer.parseInt(words[2]);
    if (!Files.exists(folder)) {
      Files.createDirectories(folder);
      long began = System.nanoTime();
      ManyCourses.fill(folder, Integer.parseInt(words[1]), SEED);
      OUT.println(words[1] + " courses made in " + secondsSince(began) + " s");
    }
    long began = System.nanoTime();
    var settings =
        ServerSettings.of(
                ServerSettings.LOOPBACK, 0, Optional.empty(), "Northgate Clinic", ZoneOffset.UTC)
            .withClock(new ClockSettings.Given());
    try (OpenClinic clinic = OpenClinic.in(folder, InstantSource.system());
        RunningServer server = RunningServer.start(settings, clinic)) {
      var people = new ManyPeople(server);
      Visitor first = people.signedIn(0);
      OUT.println("first page after " + secondsSince(began) + " s");
      people.know(first);
      while (first.read("/").contains("eing computed")) {
        LockSupport.parkNanos(SECOND);
      }
      OUT.println("all rows of Today made after " + secondsSince(began) + " s");
      people.run(10, Duration.ofSeconds(BESIDE_PAGES), /* waits= */ false); // warm
      for (int number : new int[] {1, 10, 50}) {
        people.measure(number, Duration.ofSeconds(seconds), /* waits= */ true);
      }
      people.measure(10, Duration.ofSeconds(seconds), /* waits= */ false);
    }
  }

  private static long secondsSince(long began) {
    return (System.nanoTime() - began) / SECOND;
  }

  private Visitor signedIn(int number) {
    DemoClinic.Member member = DemoClinic.MEMBERS.get(1 + number % 2);
    var visitor = new Visitor(server.uri());
    visitor.send(
        "/sign-in", Map.of("signInName", member.signInName(), "password", member.password()));
    return visitor;
  }

  /** Remembers courses of pages of the list that are far from one another. */
  private void know(Visitor visitor) {
    for (int page = 1; courses.size() < COURSES_KNOWN; page += 7) {
      List<String> here =
          COURSE.matcher(visitor.read("/?page=" + page)).results().map(at -> at.group(1)).toList();
      if (here.isEmpty() || page > 10_000 || courses.containsAll(here)) {
        return;
      }
      courses.addAll(here);
    }
  }

  private void measure(int number, Duration time, boolean waits) throws Exception {
    long server = processNanoseconds();
    long clients = clientNanoseconds();
    visiting.set(0);
    long began = System.nanoTime();
    Map<Doing, List<Double>> times = run(number, time, waits);
    double wall = (System.nanoTime() - began) / (double) SECOND;
    double ofVisitors = (visiting.get() + clientNanoseconds() - clients) / (double) SECOND;
    double ofAll = (processNanoseconds() - server) / (double) SECOND;
    OUT.println();
    OUT.println(
        number
            + (waits ? " people, " : " people who never wait, ")
            + Math.round(wall)
            + " s; processor time "
            + Math.round(ofAll)
            + " s, of it the visitors' "
            + Math.round(ofVisitors)
            + " s");
    times.forEach((doing, each) -> OUT.println(line(doing, each)));
  }

  private static String line(Doing doing, List<Double> times) {
    Collections.sort(times);
    return "  "
        + doing
        + ": "
        + times.size()
        + " times, median "
        + part(times, 50)
        + " ms, 95 of 100 "
        + part(times, 95)
        + ", 99 of 100 "
        + part(times, 99)
        + ", longest "
        + part(times, 100);
  }

  private static long part(List<Double> sorted, int ofHundred) {
    int at = (int) Math.ceil(sorted.size() * ofHundred / 100.0) - 1;
    return Math.round(sorted.get(Math.max(0, at)));
  }

  private Map<Doing, List<Double>> run(int number, Duration time, boolean waits) throws Exception {
    var all = new EnumMap<Doing, List<Double>>(Doing.class);
    List<Visitor> visitors = new ArrayList<>();
    for (int one = 0; one < number; one++) {
      visitors.add(signedIn(one));
    }
    try (var threads =
        Executors.newFixedThreadPool(number, work -> new Thread(work, "visitor of the bench"))) {
      long until = System.nanoTime() + time.toNanos();
      List<Future<Map<Doing, List<Double>>>> running = new ArrayList<>();
      for (int one = 0; one < number; one++) {
        var random = new SplittableRandom(SEED + one);
        Visitor visitor = visitors.get(one);
        boolean isPrescriber = one % 2 == 0;
        running.add(threads.submit(() -> visit(visitor, random, until, waits, isPrescriber)));
      }
      for (var each : running) {
        each.get()
            .forEach(
                (doing, some) -> all.computeIfAbsent(doing, key -> new ArrayList<>()).addAll(some));
      }
    }
    return all;
  }

  private Map<Doing, List<Double>> visit(
      Visitor visitor, SplittableRandom random, long until, boolean waits, boolean isPrescriber) {
    var times = new EnumMap<Doing, List<Double>>(Doing.class);
    while (System.nanoTime() < until) {
      if (waits) {
        LockSupport.parkNanos((long) (random.nextInt(LEAST_WAIT, MOST_WAIT) * MILLISECOND));
      }
      Doing doing = next(random);
      if (doing == Doing.SIGN && !isPrescriber) {
        doing = Doing.REPORT;
      }
      String course = courses.get(random.nextInt(courses.size()));
      double took = act(visitor, doing, course, random);
      if (took > 0) {
        times.computeIfAbsent(doing, key -> new ArrayList<>()).add(took);
      }
    }
    visiting.addAndGet(THREADS.getCurrentThreadCpuTime());
    return times;
  }

  private static Doing next(SplittableRandom random) {
    int left = random.nextInt(100);
    for (Doing doing : Doing.values()) {
      left -= doing.often;
      if (left < 0) {
        return doing;
      }
    }
    return Doing.TODAY;
  }

  /**
   * How many milliseconds it took from the last form or link to the answer; 0 if it was nothing.
   */
  private static double act(Visitor visitor, Doing doing, String course, SplittableRandom random) {
    return switch (doing) {
      case TODAY -> timed(() -> visitor.read("/"));
      case COURSE -> timed(() -> visitor.read(course));
      case SEARCH -> {
        String typed = "MC-" + random.nextInt(100_000, 101_000);
        yield sent(visitor, visitor.fill("/", "/men", Map.of("typed", typed)));
      }
      case REPORT -> {
        var at =
            java.time.Instant.now().atZone(ZoneOffset.UTC).minusMinutes(random.nextInt(61, 5000));
        String path = course + "/report";
        Map<String, String> form =
            Map.of(
                "identified", "yes",
                "date", at.toLocalDate().toString(),
                "time", at.toLocalTime().toString().substring(0, 5),
                "grade", "3",
                "soft", "exactly",
                "exactMinutes", "45",
                "causes", "none_found");
        yield sent(visitor, visitor.fill(path, path, form));
      }
      case SIGN -> {
        Optional<MatchResult> tap = SIGN.matcher(visitor.read(course)).results().findFirst();
        if (tap.isEmpty()) {
          yield 0;
        }
        yield sent(
            visitor,
            visitor.fill(
                course,
                course + "/sign",
                Map.of(
                    "basis", tap.get().group(1),
                    "volume", tap.get().group(2),
                    "place", tap.get().group(3))));
      }
    };
  }

  /** What was refused, because somebody else was quicker, is no time of a form that was taken. */
  private static double sent(Visitor visitor, Visitor.Form form) {
    long began = System.nanoTime();
    boolean isTaken = visitor.isTaken(form);
    return isTaken ? (System.nanoTime() - began) / MILLISECOND : 0;
  }

  private static double timed(Runnable work) {
    long began = System.nanoTime();
    work.run();
    return (System.nanoTime() - began) / MILLISECOND;
  }

  private static long processNanoseconds() {
    var bean =
        (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return bean.getProcessCpuTime();
  }

  /** Of the threads by which the visitors read, the visitors themselves left out. */
  private static long clientNanoseconds() {
    long sum = 0;
    for (ThreadInfo thread : THREADS.dumpAllThreads(false, false)) {
      if (thread.getThreadName().contains("HttpClient")) {
        sum += THREADS.getThreadCpuTime(thread.getThreadId());
      }
    }
    return sum;
  }
}
