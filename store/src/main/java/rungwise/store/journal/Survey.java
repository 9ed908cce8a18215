package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.JOURNAL_HEAD;
import static rungwise.store.schema.Tables.PAGE_VIEWED;
import static rungwise.store.schema.Tables.PAGE_VIEWED_COURSE;
import static rungwise.store.schema.Tables.PAST_HISTORY;
import static rungwise.store.schema.Tables.PAST_INJECTION;
import static rungwise.store.schema.Tables.SIGN_IN;

import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.Cursor;
import org.jooq.DSLContext;
import org.jooq.Record3;
import org.jooq.Table;
import org.jooq.TableRecord;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.soundness.Flaw.What;
import rungwise.store.schema.tables.records.EntryRecord;
import rungwise.store.schema.tables.records.JournalHeadRecord;

/**
 * Looks at what every course rests on, and goes on after something that is broken: what is wrong
 * with one course is that course's own.
 */
final class Survey {

  /** Traces of who looked and who came in: nothing clinical rests on them. */
  private static final List<Table<?>> TRACES = List.of(PAGE_VIEWED, PAGE_VIEWED_COURSE, SIGN_IN);

  private static final String VIEWED = "page_viewed";

  /** Many rows: they are looked at with the whole chain alone. */
  private static final String BROUGHT_IN = "past_history_brought_in";

  private final DSLContext reading;
  private final Seals seals;

  Survey(DSLContext reading, Seals seals) {
    this.reading = reading;
    this.seals = seals;
  }

  /** People, preparations, syringes, protocols and the like. */
  List<Flaw> foundation() {
    Condition own =
        ENTRY
            .COURSE_ID
            .isNull()
            .and(ENTRY.KIND.notIn(VIEWED, BROUGHT_IN))
            .andNotExists(DSL.selectOne().from(SIGN_IN).where(SIGN_IN.ENTRY_ID.eq(ENTRY.ID)));
    List<Table<?>> tables =
        FactTables.all().stream()
            .filter(table -> !TRACES.contains(table))
            .filter(table -> !table.equals(PAST_HISTORY) && !table.equals(PAST_INJECTION))
            .toList();
    return broken(own, tables).stream().map(seq -> new Flaw(What.SHARED, seq)).toList();
  }

  /**
   * An entry that is not as it was sealed, if every course rests on it.
   *
   * @param seq its number
   */
  Optional<Flaw> shared(long seq) {
    boolean isOfCourse =
        reading.fetchExists(ENTRY, ENTRY.SEQ.eq(seq).and(ENTRY.COURSE_ID.isNotNull()));
    boolean isTrace = TRACES.stream().anyMatch(table -> hasRow(table, seq));
    return isOfCourse || isTrace || isAsSealed(seq)
        ? Optional.empty()
        : Optional.of(new Flaw(What.SHARED, seq));
  }

  private boolean hasRow(Table<?> table, long seq) {
    return reading.fetchExists(
        reading
            .selectOne()
            .from(table)
            .join(ENTRY)
            .on(ENTRY.ID.eq(FactTables.entryId(table)))
            .where(ENTRY.SEQ.eq(seq)));
  }

  /** Entries that were removed, added or moved, and an end that is not where it was sealed. */
  List<Flaw> chain() {
    var flaws = new ArrayList<Flaw>();
    long last = 0;
    String seal = Seals.BEFORE_THE_FIRST;
    try (Cursor<Record3<Long, String, String>> entries =
        reading
            .select(ENTRY.SEQ, ENTRY.PREVIOUS_SEAL, ENTRY.SEAL)
            .from(ENTRY)
            .orderBy(ENTRY.SEQ)
            .fetchLazy()) {
      for (var entry : entries) {
        long seq = entry.value1();
        boolean follows = seal.equals(entry.value2());
        boolean isGap = seq != last + 1;
        if (isGap || (!follows && isAsSealed(seq) && isAsSealed(last))) {
          flaws.add(new Flaw(What.CHAIN, last + 1));
        }
        last = seq;
        seal = String.valueOf(entry.value3());
      }
    }
    end(last, seal).ifPresent(flaws::add);
    return flaws;
  }

  private Optional<Flaw> end(long last, String seal) {
    JournalHeadRecord head = reading.fetchOne(JOURNAL_HEAD);
    if (head == null) {
      return last == 0 ? Optional.empty() : Optional.of(new Flaw(What.CHAIN, last));
    }
    boolean isThere =
        seals.isSealed(head)
            && head.getSeq() == last
            && (head.getSeal().equals(seal) || !isAsSealed(last));
    return isThere ? Optional.empty() : Optional.of(new Flaw(What.CHAIN, last + 1));
  }

  /** Whether an entry, with all rows that any table has of it, is as it was sealed. */
  private boolean isAsSealed(long seq) {
    return seq == 0 || isAsSealed(ENTRY.SEQ.eq(seq));
  }

  /** Whether some entries, with all rows that any table has of them, are as they were sealed. */
  boolean isAsSealed(Condition own) {
    return broken(own, FactTables.all()).isEmpty();
  }

  private List<Long> broken(Condition own, List<Table<?>> tables) {
    try {
      return brokenAtOnce(own, tables);
    } catch (DataAccessException | IllegalArgumentException | DateTimeException damaged) {
      return numbers(own).stream().filter(seq -> isUnreadableOrBroken(seq, tables)).toList();
    }
  }

  private List<Long> numbers(Condition own) {
    return reading.select(ENTRY.SEQ).from(ENTRY).where(own).orderBy(ENTRY.SEQ).fetch(ENTRY.SEQ);
  }

  private boolean isUnreadableOrBroken(long seq, List<Table<?>> tables) {
    try {
      return !brokenAtOnce(ENTRY.SEQ.eq(seq), tables).isEmpty();
    } catch (DataAccessException | IllegalArgumentException | DateTimeException damaged) {
      return true;
    }
  }

  private List<Long> brokenAtOnce(Condition own, List<Table<?>> tables) {
    Map<String, List<TableRecord<?>>> rows = new HashMap<>();
    for (Table<?> table : tables) {
      reading
          .select(table.fields())
          .from(ENTRY)
          .crossJoin(table) // SQLite keeps its order
          .where(own)
          .and(FactTables.entryId(table).eq(ENTRY.ID))
          .orderBy(FactTables.order(table))
          .forEach(
              row ->
                  rows.computeIfAbsent(FactTables.entryIdOf(row), id -> new ArrayList<>())
                      .add((TableRecord<?>) row.into(table)));
    }
    var broken = new ArrayList<Long>();
    for (EntryRecord entry : reading.selectFrom(ENTRY).where(own).orderBy(ENTRY.SEQ)) {
      List<TableRecord<?>> facts = rows.getOrDefault(entry.getId(), List.of());
      if (!seals.ofEntry(entry, facts).equals(entry.getSeal())) {
        broken.add(entry.getSeq());
      }
    }
    return broken;
  }
}
