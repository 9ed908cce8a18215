package rungwise.app.verb;

import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.app.clock.ClockSettings;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.WrongUse;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.FactorRule.Asked;

/** Serves a clinic's pages from its data folder until the process is ended. */
@Command(
    name = "serve",
    description = "Serve a clinic's pages from its data folder.",
    mixinStandardHelpOptions = true)
final class ServeVerb implements Callable<Integer> {

  private static final int LONGEST_SHIFT = 24;

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

  @Mixin private ZoneOption zone = new ZoneOption();

  @Option(
      names = "--public-address",
      defaultValue = "${env:RUNGWISE_PUBLIC_ADDRESS}",
      description = {
        "Address by which people know this server, such as https://clinic.example. Passkeys and an"
            + " identity provider need it."
      })
  private @Nullable String publicAddress;

  @Option(
      names = "--second-factor",
      defaultValue = "required",
      description = {
        "to-enter: nobody opens a page without one; required: nobody signs a dose, protocol or"
            + " decision without one; if-set-up: who has set one up gives it. [${DEFAULT-VALUE}]"
      })
  private String secondFactor = "";

  @Option(
      names = "--shift-hours",
      defaultValue = "12",
      description = "How long a second factor that was given counts, 1 to 24. [${DEFAULT-VALUE}]")
  private int shiftHours;

  @Option(
      names = "--accept-shorter-record",
      paramLabel = "WHY",
      description = {
        "Take a record that ends before what had been saved for the whole one, because somebody put"
            + " an older copy back on purpose. The words go on record."
      })
  private @Nullable String shorterBecause;

  @Option(
      names = "--time-source",
      paramLabel = "URL",
      defaultValue = "${env:RUNGWISE_TIME_SOURCE}",
      description = {
        "A web address of another machine whose answers say what time it is, such as that of the"
            + " clinic's own network; the clock of this machine is compared with it."
      })
  private @Nullable String timeSource;

  @Mixin private ProviderOptions provider = new ProviderOptions();

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
    ServerSettings settings = readSettings();
    if (settings.isOpenToOthersInClear()) {
      err.println(
          "Warning: "
              + address
              + " can be reached from other machines and the pages are not encrypted: anybody in"
              + " between reads passwords and records. Give --tls-certificate and --tls-key.");
    }
    OpenClinic opened = OpenClinic.in(data, InstantSource.system());
    acceptShorter(opened);
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

  private void acceptShorter(OpenClinic opened) {
    if (shorterBecause == null) {
      return;
    }
    try {
      opened.acceptShorterRecord(shorterBecause);
    } catch (WrongUse e) {
      opened.close();
      throw e;
    }
  }

  private ServerSettings readSettings() {
    ServerSettings own =
        ServerSettings.of(address, port, readTls(), clinic, zone.read())
            .withFactors(readRule())
            .withClock(new ClockSettings.Watched(readTimeSource()));
    ServerSettings known =
        publicAddress == null
            ? own
            : own.knownAs(
                PublicAddresses.read("--public-address", publicAddress, /* mayHavePath= */ false));
    return provider.read().map(known::withProvider).orElse(known);
  }

  private Optional<URI> readTimeSource() {
    return Optional.ofNullable(timeSource)
        .map(given -> PublicAddresses.read("--time-source", given, /* mayHavePath= */ true));
  }

  private FactorRule readRule() {
    if (shiftHours < 1 || shiftHours > LONGEST_SHIFT) {
      throw new WrongUse("--shift-hours " + shiftHours + " cannot be: use 1 to 24.");
    }
    Asked asked =
        switch (secondFactor) {
          case "to-enter" -> Asked.OF_EVERYBODY_WHO_ENTERS;
          case "required" -> Asked.OF_EVERYBODY_WHO_SIGNS;
          case "if-set-up" -> Asked.OF_WHO_HAS_ONE;
          default ->
              throw new WrongUse(
                  "--second-factor "
                      + secondFactor
                      + " is not known: use to-enter, required or if-set-up.");
        };
    return new FactorRule(asked, Duration.ofHours(shiftHours));
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
}
