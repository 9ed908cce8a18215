package rungwise.app.verb;

import java.nio.file.Path;
import java.time.Instant;
import rungwise.files.JsonObject;
import rungwise.store.backup.Copied;
import rungwise.store.backup.Head;
import rungwise.store.journal.Inspected;

/** How a backup or a restore went, for a person and for a program. */
final class CopiedText {

  private CopiedText() {}

  static String backup(Copied copied, Path target) {
    return switch (copied) {
      case Copied.Kept(Head head, boolean hasKey) ->
          "The backup %s is whole: %s. %s"
              .formatted(target, end(head), hasKey ? WITH_KEY : WITHOUT_KEY);
      case Copied.Refused(Inspected.Broken broken) ->
          VerifyText.words(broken) + " No backup was left.";
    };
  }

  static String restore(Copied copied, Path data) {
    return switch (copied) {
      case Copied.Kept(Head head, boolean hasKey) ->
          "The record in %s is whole: %s. Everything after that is not in it."
              .formatted(data, end(head));
      case Copied.Refused(Inspected.Broken broken) ->
          "Nothing was put back. The backup is not the record that is wanted. "
              + broken.first().words();
    };
  }

  private static String end(Head head) {
    return head.lastAt()
        .map(
            at ->
                "%s, the last of %s, seal %s"
                    .formatted(VerifyText.counted(head.entries()), at, head.lastSeal()))
        .orElse("no entry yet");
  }

  /** One object; its keys are fixed. A double holds every count that a file can have. */
  static JsonObject json(Copied copied) {
    return switch (copied) {
      case Copied.Kept(Head head, boolean hasKey) -> {
        JsonObject object =
            JsonObject.empty()
                .with("whole", true)
                .with("entries", (double) head.entries())
                .with("last_seal", head.lastSeal())
                .with("made_at", head.madeAt().toString())
                .with("with_key", hasKey);
        yield head.lastAt()
            .map(Instant::toString)
            .map(at -> object.with("last_at", at))
            .orElseGet(() -> object.withNothing("last_at"));
      }
      case Copied.Refused(Inspected.Broken broken) -> VerifyText.json(broken);
    };
  }

  private static final String WITHOUT_KEY =
      "The key that seals the record is not in it: keep journal.key of the data folder apart from"
          + " the backups, for without it none can be restored.";
  private static final String WITH_KEY =
      "The key that seals the record is in it: keep it where only those can read who may change"
          + " the record.";
}
