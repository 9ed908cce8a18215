package rungwise.app;

import rungwise.app.verb.RungwiseCommand;

/** Where the program starts. */
public final class Main {

  private Main() {}

  /** Runs one verb and ends the process with its exit status. */
  public static void main(String[] arguments) {
    System.exit(RungwiseCommand.run(arguments));
  }
}
