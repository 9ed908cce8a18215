package rungwise.web.soundness;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.soundness.Doubts;
import rungwise.clinic.soundness.Flaw;

/**
 * A fault that is not of one course alone, and the way out of it. None of these is acknowledged:
 * what every course rests on is known or it is not.
 *
 * @param fault what is wrong, in a sentence
 * @param stops what is stopped until it is mended
 * @param out what mends it, in the order in which it is done
 */
public record Way(String fault, String stops, List<String> out) {

  private static final String EVERY_COURSE =
      "Every course is stopped: nobody injects and nothing is signed. Reports and calls are taken.";
  private static final String NOTHING =
      "No course is stopped by it, but for the one that says so on its own page.";
  private static final String COPY =
      "Copy the whole data folder as it is now to another disk, so that the cause can be looked"
          + " for.";
  private static final String RESTORE =
      "Look for the newest backup that is whole: rungwise verify says so. Put it into an empty"
          + " folder with rungwise restore, start from there, and enter anew what was written"
          + " since.";
  private static final String NOT_ACKNOWLEDGED =
      "It cannot be acknowledged: a dose would rest on what nobody wrote.";

  public Way {
    out = List.copyOf(out);
  }

  /** Everything that is wrong, what stops every course first. */
  static List<Way> of(Doubts doubts) {
    List<Way> shared = doubts.shared().stream().map(Way::of).toList();
    Optional<Way> first = doubts.firstBroken().filter(one -> shared.isEmpty()).map(Way::ofOne);
    return Stream.concat(shared.stream(), first.stream()).toList();
  }

  private static Way ofOne(String broken) {
    return new Way(
        broken,
        NOTHING,
        List.of(
            COPY,
            "If a course below says so, go by what is said there. If none does, a look, a sign-in"
                + " or a clock entry was changed: who looked at whom is then not proved.",
            RESTORE));
  }

  private static Way of(Flaw flaw) {
    String fault =
        flaw.words().substring(0, 1).toUpperCase(Locale.ROOT) + flaw.words().substring(1) + ".";
    return new Way(fault, EVERY_COURSE, out(flaw.what()));
  }

  private static List<String> out(Flaw.What what) {
    return switch (what) {
      case SHARED, CHAIN -> List.of(COPY, RESTORE, NOT_ACKNOWLEDGED);
      case FILE ->
          List.of(
              COPY,
              "Take a backup with rungwise backup: it writes the file anew, and checks each entry"
                  + " with its seal. If it says that it is whole, put it into an empty folder with"
                  + " rungwise restore and start from there: nothing is lost.",
              "If it does not: " + RESTORE);
      case CUT ->
          List.of(
              COPY,
              RESTORE,
              "If nothing later than this record is left anywhere, or it was put back on purpose:"
                  + " start once with serve --accept-shorter-record and the reason. Then ask"
                  + " everybody what was written since, and enter it anew before anything is"
                  + " signed.");
      case END_NOT_KNOWN ->
          List.of(
              COPY,
              "Compare the last entries of the audit trail with what people wrote last. If nothing"
                  + " is missing, start once with serve --accept-shorter-record and the reason.",
              "If something is missing: " + RESTORE);
      case CHANGED, UNREADABLE, NOT_ALL -> List.of(COPY, RESTORE);
    };
  }
}
