package rungwise.app.fuzz;

import org.jspecify.annotations.Nullable;

/** What the tool calls: once at the beginning, then for each input. */
public final class Fuzzer {

  /** Names the target for this process. */
  static final String TARGET = "rungwise.target";

  private static @Nullable Timed timed;

  private Fuzzer() {}

  /** Begins the reader that a property names. */
  public static void fuzzerInitialize() {
    timed = new Timed(Target.valueOf(System.getProperty(TARGET, "")).start());
  }

  /** Reads one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    if (timed == null) {
      throw new IllegalStateException("bug: the tool begins with fuzzerInitialize");
    }
    timed.read(input);
  }
}
