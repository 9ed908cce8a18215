package rungwise.clinic.past;

import java.time.Instant;
import java.util.List;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.AccountId;

/**
 * Port: the histories that were brought in. One that was withdrawn stays and proves nothing more;
 * what it said against a dose counts until a prescriber confirms that it was wrong.
 */
public interface PastHistories {

  /** Where nothing was ever brought in. */
  PastHistories NONE =
      new PastHistories() {
        @Override
        public List<Kept> of(String recordKey) {
          return List.of();
        }

        @Override
        public List<Kept> all() {
          return List.of();
        }

        @Override
        public List<Undone> undone(String recordKey) {
          return List.of();
        }

        @Override
        public void append(String importId, String source, PastHistory history, Instant at) {
          throw new IllegalStateException("bug: nothing is kept here");
        }

        @Override
        public int withdraw(String importId, Instant at, String reason) {
          return 0;
        }
      };

  /**
   * A history in the record.
   *
   * @param number of its entry
   * @param at when it was written down
   */
  record Kept(long number, Instant at, String importId, PastHistory history) {}

  /**
   * A history that was taken back with its import. Nobody who may prescribe has said that it was
   * wrong, so what it stopped and closed stays so until one has.
   *
   * @param entry the entry that takes it back
   * @param number of that entry
   * @param at when it was taken back
   * @param reason why, in the writer's words
   */
  record Undone(Kept kept, EntryId entry, long number, Instant at, String reason) {}

  /** Those of a record number that were taken back. */
  List<Undone> undone(String recordKey);

  /** Those of a record number that count. */
  List<Kept> of(String recordKey);

  /** All that count, in the order in which they were written down. */
  List<Kept> all();

  /**
   * Writes one down, inside the caller's transaction, by {@link AccountId#PROGRAM}.
   *
   * @param source what the file was called
   */
  void append(String importId, String source, PastHistory history, Instant at);

  /**
   * Takes every history of an import out of what counts, inside the caller's transaction.
   *
   * @return how many there were
   */
  int withdraw(String importId, Instant at, String reason);
}
