package rungwise.app.verb;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import rungwise.app.clock.ClockSettings;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.TemporaryFolder;

/**
 * Starts a server on an empty clinic, asks for the sign-in page, and stops: what the launcher
 * records so that later starts are fast. Nothing of it is kept.
 */
@Command(name = "warm-up", hidden = true, description = "Start, show the sign-in page, and stop.")
final class WarmUpVerb implements Callable<Integer> {

  private static final String CLINIC = "Warm-up";
  private static final List<String> PAGES =
      List.of("sign-in", "welcome", "", "assets/rungwise.css", "assets/icon.svg");

  @Override
  public Integer call() throws IOException {
    ServerSettings settings =
        ServerSettings.of(ServerSettings.LOOPBACK, 0, Optional.empty(), CLINIC, ZoneOffset.UTC)
            .withClock(new ClockSettings.Given());
    try (TemporaryFolder folder = TemporaryFolder.make()) {
      OpenClinic opened = OpenClinic.in(folder.path(), InstantSource.system());
      try (RunningServer server = RunningServer.start(settings, opened)) {
        DemoClinic.fillFirst(opened.people());
        for (String page : PAGES) {
          ask(server.uri().resolve(page));
        }
      }
    }
    return ExitCode.OK;
  }

  private static void ask(URI page) throws IOException {
    var connection = (HttpURLConnection) page.toURL().openConnection();
    if (connection.getResponseCode() != HttpURLConnection.HTTP_OK) {
      throw new UncheckedIOException(
          new IOException(page.getPath() + " answered " + connection.getResponseCode()));
    }
    try (var body = connection.getInputStream()) {
      body.readAllBytes();
    }
  }
}
