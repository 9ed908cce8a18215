package rungwise.clinic.past;

import java.time.Instant;
import java.util.List;
import rungwise.clinic.people.AccountId;

/** Port: the histories that were brought in. One that was withdrawn stays and no longer counts. */
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
