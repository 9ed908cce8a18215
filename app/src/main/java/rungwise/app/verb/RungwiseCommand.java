package rungwise.app.verb;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;
import rungwise.app.server.WrongUse;
import rungwise.clinic.CannotKeep;
import rungwise.clinic.record.RecordFault;
import rungwise.store.database.CannotOpenStore;

/** The command line as a whole. */
@Command(
    name = "rungwise",
    description = "Dose titration support for clinicians who run penile self-injection therapy.",
    synopsisSubcommandLabel = "VERB",
    commandListHeading = "%nVerbs:%n",
    version = "rungwise 0.1.0",
    mixinStandardHelpOptions = true,
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:done",
      "1:the program failed",
      "2:wrong use or bad input",
      "3:done, but the result may not be signed or relied on"
    },
    subcommands = {
      ServeVerb.class,
      DemoVerb.class,
      DoseVerb.class,
      ForecastVerb.class,
      FitVerb.class,
      VerifyVerb.class,
      BackupVerb.class,
      RestoreVerb.class,
      ExportVerb.class,
      ImportVerb.class,
      WarmUpVerb.class
    })
public final class RungwiseCommand implements Runnable {

  /** The exit status of a result that may not be signed or relied on. */
  static final int NOT_TO_BE_RELIED_ON = 3;

  /** Put here by the command line before the verb is called. */
  @Spec private CommandSpec spec = CommandSpec.create();

  private RungwiseCommand() {}

  /**
   * Runs one verb; the exit status is 0 done, 1 fault, 2 wrong use or bad input, 3 done with
   * doubts.
   */
  public static int run(String... arguments) {
    return commandLine().execute(arguments);
  }

  /** The command line with its exit statuses, before it is told where to print. */
  static CommandLine commandLine() {
    return new CommandLine(new RungwiseCommand())
        .setParameterExceptionHandler(RungwiseCommand::refuse)
        .setExecutionExceptionHandler(RungwiseCommand::fail);
  }

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "No verb was given: name one of those that --help lists.");
  }

  private static int refuse(ParameterException wrong, String[] arguments) {
    CommandSpec verb = wrong.getCommandLine().getCommandSpec();
    PrintWriter err = wrong.getCommandLine().getErr();
    err.println(wrong.getMessage());
    err.println("Try '" + verb.qualifiedName() + " --help'.");
    return ExitCode.USAGE;
  }

  private static boolean isForThePerson(Exception failure) {
    return failure instanceof WrongUse
        || failure instanceof CannotOpenStore
        || failure instanceof CannotKeep
        || failure instanceof RecordFault;
  }

  private static int fail(Exception failure, CommandLine verb, ParseResult parsed) {
    PrintWriter err = verb.getErr();
    if (isForThePerson(failure)) {
      err.println(failure.getMessage());
      return ExitCode.USAGE;
    }
    err.println("The program failed. Nothing more is known than this:");
    failure.printStackTrace(err);
    return ExitCode.SOFTWARE;
  }
}
