package rungwise.app.verb;

import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import rungwise.app.server.WrongUse;
import rungwise.store.backup.Head;

/** The end of the record as somebody kept it elsewhere; it must still be in the record. */
final class KeptEnd {

  private static final Pattern SEAL = Pattern.compile("[0-9a-f]{64}");

  @Option(
      names = "--kept-seal",
      paramLabel = "SEAL",
      description = "The seal of an entry that was kept elsewhere; it must be in the record.")
  private @Nullable String keptSeal;

  @Option(
      names = "--head",
      paramLabel = "FILE",
      description = "The file head.txt of a backup instead; its last entry must be in the record.")
  private @Nullable Path head;

  /**
   * The seal to look for.
   *
   * @throws WrongUse if it is none, or both were given
   */
  Optional<String> seal() {
    if (keptSeal != null && head != null) {
      throw new WrongUse("--kept-seal and --head say the same: give one of them.");
    }
    if (head != null) {
      return Head.read(head).seal();
    }
    if (keptSeal != null && !SEAL.matcher(keptSeal).matches()) {
      throw new WrongUse(
          "--kept-seal \""
              + keptSeal
              + "\" is not a seal: give the 64 digits, 0 to 9 and a to f, that verify printed.");
    }
    return Optional.ofNullable(keptSeal);
  }
}
