package rungwise.app.verb;

import java.util.Optional;
import rungwise.files.JsonObject;
import rungwise.store.journal.BrokenEntry;
import rungwise.store.journal.Inspected;
import rungwise.store.journal.Inspected.Standing;

/** What the check of a record found, for a person and for a program. */
final class VerifyText {

  private VerifyText() {}

  static String words(Inspected found) {
    return switch (found) {
      case Inspected.Whole whole -> whole(whole);
      case Inspected.Broken broken -> broken(broken.first(), broken.standing());
    };
  }

  private static String whole(Inspected.Whole whole) {
    return whole
        .lastAt()
        .map(
            at ->
                "The record is whole: %s, last seal %s of %s."
                    .formatted(counted(whole.entries()), whole.lastSeal(), at))
        .orElse("The record is whole: it has no entry yet.");
  }

  static String counted(long entries) {
    return entries == 1 ? "1 entry" : entries + " entries";
  }

  private static String broken(BrokenEntry first, Optional<Standing> standing) {
    String now =
        standing
            .map(
                head ->
                    " What stands there now: %s, recorded %s by %s."
                        .formatted(head.kind(), head.at(), head.by()))
            .orElse("");
    return "The record is broken. "
        + first.words()
        + now
        + " Keep the folder as it is, and compare it with a backup.";
  }

  /** One object; its keys are fixed. A double holds every count that a file can have. */
  static JsonObject json(Inspected found) {
    return switch (found) {
      case Inspected.Whole whole -> json(whole);
      case Inspected.Broken broken -> json(broken);
    };
  }

  private static JsonObject json(Inspected.Whole whole) {
    JsonObject object =
        JsonObject.empty()
            .with("whole", true)
            .with("entries", (double) whole.entries())
            .with("last_seal", whole.lastSeal());
    return whole
        .lastAt()
        .map(at -> object.with("last_at", at.toString()))
        .orElseGet(() -> object.withNothing("last_at"));
  }

  private static JsonObject json(Inspected.Broken broken) {
    JsonObject object =
        JsonObject.empty()
            .with("whole", false)
            .with("entry", (double) broken.first().seq())
            .with("wrong", broken.first().words());
    return broken
        .standing()
        .map(
            head ->
                object
                    .with("at", head.at().toString())
                    .with("by", head.by())
                    .with("kind", head.kind()))
        .orElseGet(() -> object.withNothing("at").withNothing("by").withNothing("kind"));
  }
}
