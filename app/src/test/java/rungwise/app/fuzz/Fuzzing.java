package rungwise.app.fuzz;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Runs the tool over each target, one after the other, each in a process of its own.
 *
 * <p>From the command line: a folder to work in, the seconds in all, and the tokens of the targets
 * if not all are. What was found and is new is written to the folder, for whoever keeps it.
 */
public final class Fuzzing {

  private static final List<String> TOOL =
      List.of(
          "-XX:+EnableDynamicAgentLoading",
          "-XX:+UseSerialGC",
          "--enable-native-access=ALL-UNNAMED",
          "--sun-misc-unsafe-memory-access=allow",
          "-Djava.awt.headless=true");
  private static final String WATCHED =
      "rungwise.**:org.snakeyaml.**:tools.jackson.core.**:org.apache.commons.csv.**";

  /** The visitor of the forms talks to the server, and the store to its database. */
  private static final String NOT_ASKED =
      Stream.of("ServerSideRequestForgery", "SqlInjection", "UnsafeSanitizer")
          .map("com.code_intelligence.jazzer.sanitizers."::concat)
          .reduce((one, other) -> one + ":" + other)
          .orElseThrow();

  private static final Pattern INPUTS = Pattern.compile("stat::number_of_executed_units: (\\d+)");
  private static final int LONGEST_FORM = 400;
  private static final int LONGEST_INPUT = 4096;
  private static final int MOST_KEPT_BYTES = 20_000;

  private final Path work;

  private Fuzzing(Path work) {
    this.work = work;
  }

  /** What came of one target. */
  private record Outcome(Target target, long inputs, long seconds, boolean isSound) {
    String line() {
      return String.format(
          Locale.ROOT,
          "%,14d inputs in %,6d s  %s%s",
          inputs,
          seconds,
          target.token(),
          isSound ? "" : "  FAILED");
    }
  }

  /** Prints how many inputs each target read; 1 if one failed. */
  public static void main(String[] args) throws Exception {
    Path work = Files.createDirectories(Path.of(args[0]));
    long seconds = Long.parseLong(args[1]);
    List<String> chosen = List.of(args).subList(2, args.length);
    var fuzzing = new Fuzzing(work);
    List<Target> targets =
        Arrays.stream(Target.values())
            .filter(target -> chosen.isEmpty() || chosen.contains(target.token()))
            .toList();
    long shares = targets.stream().mapToLong(target -> target.share).sum();
    var outcomes = new ArrayList<Outcome>();
    for (Target target : targets) {
      Outcome outcome = fuzzing.run(target, Math.max(1, seconds * target.share / shares));
      System.out.println(outcome.line());
      outcomes.add(outcome);
    }
    System.out.printf(
        Locale.ROOT,
        "%,14d inputs in all, %d of %d targets failed%n",
        outcomes.stream().mapToLong(Outcome::inputs).sum(),
        outcomes.stream().filter(outcome -> !outcome.isSound()).count(),
        outcomes.size());
    System.exit(outcomes.stream().allMatch(Outcome::isSound) ? 0 : 1);
  }

  private Outcome run(Target target, long seconds) throws Exception {
    Path own = Files.createDirectories(work.resolve(target.token()));
    Path seeds = filled(own.resolve("seeds"), target.corpus());
    Path found = Files.createDirectories(own.resolve("found"));
    long began = System.nanoTime();
    Path log = own.resolve("log.txt");
    int status =
        call(
            target,
            log,
            List.of(
                "-max_total_time=" + seconds,
                "-max_len=" + (target == Target.FORMS ? LONGEST_FORM : LONGEST_INPUT),
                "-timeout=60",
                "-rss_limit_mb=4000",
                "-print_final_stats=1",
                "-artifact_prefix=" + own + "/",
                found.toString(),
                seeds.toString()));
    long taken = (System.nanoTime() - began) / 1_000_000_000;
    keep(target, work.resolve(target.token() + ".txt"), found);
    if (status != 0) {
      System.out.println(target.token() + " failed: see " + log);
    }
    return new Outcome(target, inputs(log), taken, status == 0);
  }

  private static Path filled(Path folder, List<byte[]> inputs) throws IOException {
    Files.createDirectories(folder);
    for (int at = 0; at < inputs.size(); at++) {
      Files.write(folder.resolve("%05d".formatted(at)), inputs.get(at));
    }
    return folder;
  }

  private int call(Target target, Path log, List<String> options) throws Exception {
    var command = new ArrayList<String>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(TOOL);
    command.add("-D" + Fuzzer.TARGET + "=" + target.name());
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.add("com.code_intelligence.jazzer.Jazzer");
    command.add("--target_class=" + Fuzzer.class.getName());
    command.add("--instrumentation_includes=" + WATCHED);
    command.add("--disabled_hooks=" + NOT_ASKED);
    command.add("--reproducer_path=" + work);
    command.addAll(options);
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(log.toFile())
        .start()
        .waitFor();
  }

  private static long inputs(Path log) throws IOException {
    Matcher told = INPUTS.matcher(Files.readString(log, StandardCharsets.ISO_8859_1));
    return told.find() ? Long.parseLong(told.group(1)) : 0;
  }

  /** Writes inputs by which the tool came to code of its own, the short ones first. */
  private static void keep(Target target, Path kept, Path found) throws IOException {
    List<String> written =
        target.corpus().stream().map(Base64.getEncoder()::encodeToString).toList();
    try (Stream<Path> files = Files.list(found);
        var out = new PrintStream(kept.toFile(), StandardCharsets.US_ASCII)) {
      int bytes = 0;
      for (byte[] input : files.map(Fuzzing::read).sorted(SHORTEST).toList()) {
        String line = Base64.getEncoder().encodeToString(input);
        bytes += line.length() + 1;
        if (input.length > 0 && bytes < MOST_KEPT_BYTES && !written.contains(line)) {
          out.print(line + '\n');
        }
      }
    }
  }

  private static final Comparator<byte[]> SHORTEST =
      Comparator.<byte[]>comparingInt(input -> input.length).thenComparing(Arrays::compare);

  private static byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
