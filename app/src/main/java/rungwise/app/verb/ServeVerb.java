package rungwise.app.verb;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.WrongUse;

/** Serves a clinic's pages from its data folder until the process is ended. */
@Command(
    name = "serve",
    description = "Serve a clinic's pages from its data folder.",
    mixinStandardHelpOptions = true)
final class ServeVerb implements Callable<Integer> {

  /** Put here by the command line before the verb is called. */
  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--address",
      defaultValue = ServerSettings.LOOPBACK,
      description = "Address to listen on; this machine only unless given. [${DEFAULT-VALUE}]")
  private String address = ServerSettings.LOOPBACK;

  @Option(
      names = "--port",
      defaultValue = ServerSettings.USUAL_PORT,
      description = "Port to listen on; 0 takes any free one. [${DEFAULT-VALUE}]")
  private int port;

  @Option(
      names = "--data",
      required = true,
      description = "Folder that holds all data of the clinic. It must exist.")
  private Path data = Path.of("");

  @Option(
      names = "--clinic",
      defaultValue = "Rungwise",
      description = "Name at the top of each page. [${DEFAULT-VALUE}]")
  private String clinic = "";

  @Option(
      names = "--zone",
      description = "Time zone of the clinic, such as America/Chicago. [that of this machine]")
  private @Nullable String zone;

  @ArgGroup(exclusive = false)
  private @Nullable Tls tls;

  /** Both or neither. */
  static final class Tls {
    @Option(
        names = "--tls-certificate",
        required = true,
        description = "PEM file with the certificate and its chain; pages are then https.")
    private Path certificate = Path.of("");

    @Option(
        names = "--tls-key",
        required = true,
        description = "PEM file with the private key of the certificate.")
    private Path key = Path.of("");
  }

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    PrintWriter out = spec.commandLine().getOut();
    ServerSettings settings = ServerSettings.of(address, port, readTls(), clinic, readZone());
    if (settings.isOpenToOthersInClear()) {
      err.println(
          "Warning: "
              + address
              + " can be reached from other machines and the pages are not encrypted: anybody in"
              + " between reads passwords and records. Give --tls-certificate and --tls-key.");
    }
    OpenClinic opened = OpenClinic.in(data, InstantSource.system());
    try (RunningServer server = RunningServer.start(settings, opened)) {
      out.println("Rungwise serves " + data + " at " + server.uri());
      opened
          .people()
          .firstStart()
          .ifPresent(
              code -> {
                out.println("There is no account yet. Make the first one, an administrator's:");
                out.println("  address        " + server.uri() + "first-start");
                out.println("  one-time code  " + code.text());
              });
      out.println("ready");
      out.flush();
      server.awaitEnd();
    }
    return ExitCode.OK;
  }

  private Optional<ServerSettings.Tls> readTls() {
    return Optional.ofNullable(tls)
        .map(
            files ->
                new ServerSettings.Tls(
                    readable("--tls-certificate", files.certificate),
                    readable("--tls-key", files.key)));
  }

  private static Path readable(String option, Path file) {
    if (Files.isRegularFile(file) && Files.isReadable(file)) {
      return file;
    }
    throw new WrongUse(
        option + " " + file + " cannot be read: name a PEM file that this account may read.");
  }

  private ZoneId readZone() {
    if (zone == null) {
      return ZoneId.systemDefault();
    }
    try {
      return ZoneId.of(zone);
    } catch (DateTimeException e) {
      throw new WrongUse(
          "\"" + zone + "\" is not a time zone: use a name such as America/Chicago.", e);
    }
  }
}
