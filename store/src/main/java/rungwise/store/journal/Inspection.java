package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.FAULT_ACKNOWLEDGED;
import static rungwise.store.schema.Tables.JOURNAL_HEAD;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jooq.Cursor;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.TableRecord;
import org.jooq.exception.DataAccessException;
import rungwise.clinic.soundness.Acknowledgement;
import rungwise.clinic.soundness.Acknowledgement.Side;
import rungwise.clinic.soundness.Flaw;
import rungwise.store.schema.tables.records.EntryRecord;
import rungwise.store.schema.tables.records.JournalHeadRecord;

/** One walk over the whole journal, in one snapshot, holding one entry at a time. */
final class Inspection {

  private final DSLContext reading;
  private final Seals seals;
  private Optional<String> keptSeal;
  private long walked = 0;
  private String previousSeal = Seals.BEFORE_THE_FIRST;
  private Optional<Instant> lastAt = Optional.empty();

  /**
   * A walk that is about to begin.
   *
   * @param keptSeal the seal of an entry that must be met
   */
  Inspection(DSLContext reading, Seals seals, Optional<String> keptSeal) {
    this.reading = reading;
    this.seals = seals;
    this.keptSeal = keptSeal;
  }

  Inspected whole() {
    return firstBroken()
        .<Inspected>map(found -> new Inspected.Broken(found, standing(found.seq())))
        .orElseGet(() -> new Inspected.Whole(walked, previousSeal, lastAt));
  }

  private Optional<Inspected.Standing> standing(long seq) {
    try {
      return reading
          .select(ENTRY.RECORDED_AT, ENTRY.RECORDED_BY, ENTRY.KIND)
          .from(ENTRY)
          .where(ENTRY.SEQ.eq(seq))
          .fetchOptional()
          .filter(row -> row.value1() != null)
          .map(row -> new Inspected.Standing(row.value1(), row.value2(), row.value3()));
    } catch (DataAccessException | IllegalArgumentException damaged) {
      return Optional.empty();
    }
  }

  Optional<BrokenEntry> firstBroken() {
    try {
      return inChain().or(this::atTheEnd).or(this::withoutEntry).or(this::withoutKeptSeal);
    } catch (DataAccessException | IllegalArgumentException e) {
      return broken(walked + 1, "is not in the form in which it was written");
    }
  }

  private Optional<BrokenEntry> inChain() {
    var cursors = new ArrayList<FactCursor>();
    try (Cursor<Record> entries =
        reading
            .select(StoredText.columns(ENTRY))
            .from(ENTRY)
            .orderBy(ENTRY.SEQ.asc())
            .fetchLazy()) {
      for (Table<?> table : FactTables.all()) {
        cursors.add(FactCursor.over(reading, table));
      }
      Optional<BrokenEntry> found = Optional.empty();
      while (found.isEmpty() && entries.hasNext()) {
        found = inEntry(entries.fetchNext(), cursors);
      }
      return found;
    } finally {
      cursors.forEach(FactCursor::close);
    }
  }

  private Optional<BrokenEntry> inEntry(Record row, List<FactCursor> cursors) {
    long expected = walked + 1;
    EntryRecord entry = row.into(ENTRY);
    if (entry.getSeq() != expected) {
      return broken(expected, "is missing");
    }
    if (!entry.getPreviousSeal().equals(previousSeal)) {
      return broken(expected, "does not follow the one before it");
    }
    StoredText.check(ENTRY, row);
    var facts = new ArrayList<TableRecord<?>>();
    cursors.forEach(cursor -> facts.addAll(cursor.rowsOf(entry.getId())));
    String read = seals.ofEntry(entry, facts);
    if (!read.equals(entry.getSeal()) && !isAcknowledged(expected, read)) {
      return broken(expected, "is not as it was sealed");
    }
    walked = expected;
    previousSeal = entry.getSeal();
    lastAt = Optional.of(entry.getRecordedAt());
    keptSeal = keptSeal.filter(kept -> !kept.equals(previousSeal));
    return Optional.empty();
  }

  /**
   * Whether two people have acknowledged an entry as it was read. Their own entries are later ones,
   * which this walk finds broken if they are.
   */
  private boolean isAcknowledged(long seq, String read) {
    List<Acknowledgement> all =
        reading
            .select(ENTRY.SEQ, ENTRY.RECORDED_BY, FAULT_ACKNOWLEDGED.SIDE)
            .from(FAULT_ACKNOWLEDGED)
            .join(ENTRY)
            .on(ENTRY.ID.eq(FAULT_ACKNOWLEDGED.ENTRY_ID))
            .where(FAULT_ACKNOWLEDGED.FAULTY_SEQ.eq(seq))
            .and(FAULT_ACKNOWLEDGED.WAS_READ.eq(read))
            .and(ENTRY.SEQ.gt(seq))
            .fetch(
                row ->
                    new Acknowledgement(
                        row.value1(),
                        seq,
                        read,
                        row.value2(),
                        Side.valueOf(row.value3().toUpperCase(Locale.ROOT))));
    return Acknowledgement.isComplete(all, new Flaw(Flaw.What.CHANGED, seq, read));
  }

  private Optional<BrokenEntry> atTheEnd() {
    JournalHeadRecord head = reading.fetchOne(JOURNAL_HEAD);
    if (head == null) {
      return walked == 0 ? Optional.empty() : broken(walked, "is followed by a removed end");
    }
    if (!seals.isSealed(head)) {
      return broken(walked, "is followed by an end that is not as it was sealed");
    }
    if (head.getSeq() > walked) {
      return broken(walked + 1, "is missing: the end of the journal was cut off");
    }
    return head.getSeq() == walked && head.getSeal().equals(previousSeal)
        ? Optional.empty()
        : broken(head.getSeq() + 1, "lies beyond the sealed end of the journal");
  }

  private Optional<BrokenEntry> withoutEntry() {
    for (Table<?> table : FactTables.all()) {
      var entryId = FactTables.entryId(table);
      boolean isThere =
          reading.fetchExists(
              reading
                  .selectOne()
                  .from(table)
                  .whereNotExists(reading.selectOne().from(ENTRY).where(ENTRY.ID.eq(entryId))));
      if (isThere) {
        return broken(walked + 1, "is missing: a row of " + table.getName() + " has no entry");
      }
    }
    return Optional.empty();
  }

  /** A copy that is whole but older has every seal right, and lacks the one that was kept. */
  private Optional<BrokenEntry> withoutKeptSeal() {
    return keptSeal.flatMap(
        seal ->
            broken(
                walked + 1,
                "is missing: no entry has the seal that was kept, so the end was cut off or an"
                    + " older copy was put back"));
  }

  private static Optional<BrokenEntry> broken(long seq, String what) {
    return Optional.of(new BrokenEntry(seq, "Entry " + seq + " " + what + "."));
  }
}
