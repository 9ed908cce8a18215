package rungwise.clinic.record;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One entry of the record with all that it says.
 *
 * @param number counts from 1 without a gap
 * @param kind what happened, in words with underscores
 * @param course the course it belongs to, if it belongs to one
 * @param by the account that recorded it
 * @param onBehalfOf the account for which it was recorded, if not for the recorder's own
 * @param corrects the id of the entry that this one corrects
 * @param clock what was believed of the clock when it was written, as a word, where that was kept
 * @param facts the rows that say what happened, by the name of their kind, which is their order
 */
public record RecordedEntry(
    long number,
    String id,
    String kind,
    Optional<String> course,
    Instant at,
    String by,
    Optional<String> onBehalfOf,
    Optional<String> corrects,
    Optional<String> reason,
    Optional<String> clock,
    List<FactRow> facts) {

  public RecordedEntry {
    facts = List.copyOf(facts);
  }

  /**
   * One row of what an entry says.
   *
   * @param values by the name of their column, in its order: a String, a Long or a Boolean
   */
  public record FactRow(String name, Map<String, Object> values) {}

  RecordedEntry numbered(long other, List<FactRow> otherFacts) {
    return new RecordedEntry(
        other, id, kind, course, at, by, onBehalfOf, corrects, reason, clock, otherFacts);
  }
}
