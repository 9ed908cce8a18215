package rungwise.app.verb;

import java.io.PrintWriter;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.StoryClock;
import rungwise.app.server.TemporaryFolder;

/** Serves an invented clinic on this machine only; everything in it is gone afterwards. */
@Command(
    name = "demo",
    description =
        "Serve an invented clinic, freshly made, on this machine only. It is gone afterwards.",
    mixinStandardHelpOptions = true)
final class DemoVerb implements Callable<Integer> {

  /** Put here by the command line before the verb is called. */
  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--port",
      defaultValue = ServerSettings.USUAL_PORT,
      description = "Port to listen on; 0 takes any free one. [${DEFAULT-VALUE}]")
  private int port;

  @Override
  public Integer call() {
    ServerSettings settings =
        ServerSettings.of(
            ServerSettings.LOOPBACK,
            port,
            Optional.empty(),
            DemoClinic.NAME,
            ZoneId.systemDefault());
    try (TemporaryFolder folder = TemporaryFolder.make()) {
      var clock = new StoryClock(InstantSource.system());
      OpenClinic opened = OpenClinic.in(folder.path(), clock);
      RunningServer.atProcessEnd(folder::close);
      DemoClinic.fill(opened, clock, settings.clinic().zone());
      try (RunningServer server = RunningServer.start(settings, opened)) {
        server.confirmClock(DemoClinic.MEMBERS.getFirst().fullName());
        print(server);
        server.awaitEnd();
      }
    }
    return ExitCode.OK;
  }

  private void print(RunningServer server) {
    PrintWriter out = spec.commandLine().getOut();
    out.println("An invented clinic is at " + server.uri());
    out.println("Nobody in it is real. Do not enter real patients: all is gone at the end.");
    out.println();
    out.println("Sign-in name     Password                        Roles");
    for (DemoClinic.Member member : DemoClinic.MEMBERS) {
      out.printf("%-16s %-31s %s%n", member.signInName(), member.password(), member.rolesInWords());
    }
    out.println();
    out.println("ready");
    out.flush();
  }
}
