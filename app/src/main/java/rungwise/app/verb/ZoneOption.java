package rungwise.app.verb;

import java.time.DateTimeException;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import rungwise.app.server.WrongUse;

/** Where the clinic is, for all that goes by its days and hours. */
final class ZoneOption {

  @Option(
      names = "--zone",
      description = "Time zone of the clinic, such as America/Chicago. [that of this machine]")
  private @Nullable String zone;

  /**
   * The zone.
   *
   * @throws WrongUse if there is none of that name
   */
  ZoneId read() {
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
