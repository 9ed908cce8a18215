package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.JOURNAL_HEAD;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.TableRecord;
import rungwise.clinic.soundness.Flaw;
import rungwise.store.database.Database;
import rungwise.store.journal.EndFile.End;
import rungwise.store.schema.tables.records.EntryRecord;
import rungwise.store.schema.tables.records.JournalHeadRecord;

/**
 * Appends to the chain and checks it. Each entry is sealed over the seal before it, its own row and
 * the rows of its facts; the end of the chain is sealed too, so that a cut end is found.
 */
public final class Journal {

  private static final short HEAD_ID = 1;
  private static final int FEW_ROWS = 8;

  private final Database database;
  private final Seals seals;
  private final CourseEnds courseEnds;
  private Optional<KeptEnd> keptEnd = Optional.empty();
  private volatile Supplier<Optional<String>> clockBelieved = Optional::empty;

  public Journal(Database database, JournalKey key) {
    this.database = database;
    this.seals = new Seals(key);
    this.courseEnds = new CourseEnds(seals);
  }

  /**
   * Appends one entry with its facts, inside the transaction of the caller. The facts get the
   * entry's id here. Instants are cut to milliseconds, which every database keeps.
   *
   * @return the entry's id
   * @throws IllegalStateException outside a transaction, or if the end of the chain is not as it
   *     was sealed
   */
  public String append(NewEntry entry, TableRecord<?>... facts) {
    return append(entry, clockBelieved.get(), facts);
  }

  /** The same of an entry that was written elsewhere, with what was believed of the clock there. */
  String append(NewEntry entry, Optional<String> clock, TableRecord<?>... facts) {
    DSLContext writing = database.writing();
    JournalHeadRecord head = head(writing);
    EntryRecord row = row(entry, head);
    row.setClockBelieved(clock.orElse(null));
    List<TableRecord<?>> rows = prepared(row.getId(), facts);
    row.setSeal(seals.ofEntry(row, rows));
    writing.executeInsert(row);
    // One statement for all rows of a table; many small rows are the usual large entry.
    if (rows.size() > FEW_ROWS) {
      writing.batchInsert(rows).execute();
    } else {
      rows.forEach(writing::executeInsert);
    }
    move(writing, row);
    if (row.getCourseId() != null) {
      courseEnds.move(writing, row);
    }
    keptEnd.ifPresent(
        kept -> database.onceCommitted(() -> kept.committed(new End(row.getSeq(), row.getSeal()))));
    return row.getId();
  }

  /** Keeps with each entry from now on what is then believed of the clock, as a word. */
  public void keepClock(Supplier<Optional<String>> believed) {
    clockBelieved = believed;
  }

  /**
   * Keeps the end of the journal in a file from now on.
   *
   * @throws rungwise.store.database.CannotOpenStore if the file cannot be made
   */
  public void keepEnd(EndFile file) {
    keptEnd = Optional.of(KeptEnd.begin(this, file));
  }

  /** Whether the record ends before what had been saved; empty if it does not. */
  public Optional<Flaw> flawOfEnd() {
    return keptEnd.flatMap(KeptEnd::flaw);
  }

  /** Whether the end could not be kept lately, so that a loss would not be told. */
  public boolean isEndBehind() {
    return keptEnd.filter(KeptEnd::isBehind).isPresent();
  }

  /**
   * Writes down that the record, which ends too early, is meant, and why; then it is the whole one.
   *
   * @return the number of the first entry that is lost
   * @throws IllegalStateException if it does not end too early
   */
  public long acceptEnd(Instant at, String by, String why) {
    KeptEnd kept = keptEnd.orElseThrow();
    Flaw flaw = kept.flaw().orElseThrow(() -> new IllegalStateException("bug: nothing is lost"));
    database.inTransaction(
        () ->
            append(
                NewEntry.of("shorter_record_accepted", at, by)
                    .because(flaw.words() + ". Accepted: " + why)));
    kept.accept();
    return flaw.entry();
  }

  /** Where the journal ends now. */
  End end() {
    return database.inSnapshot(
        () -> {
          JournalHeadRecord head = database.reading().fetchOne(JOURNAL_HEAD);
          return head == null
              ? new End(0, Seals.BEFORE_THE_FIRST)
              : new End(head.getSeq(), head.getSeal());
        });
  }

  /**
   * What of an end that was kept elsewhere is not in the journal.
   *
   * @param kept empty if what was kept cannot be read
   */
  public Optional<Flaw> missing(Optional<End> kept) {
    long last = end().seq();
    if (kept.isEmpty()) {
      return Optional.of(new Flaw(Flaw.What.END_NOT_KNOWN, last));
    }
    long seq = kept.get().seq();
    if (seq > last) {
      return Optional.of(new Flaw(Flaw.What.CUT, last + 1));
    }
    boolean isThere =
        seq == 0
            || database
                .reading()
                .fetchExists(ENTRY, ENTRY.SEQ.eq(seq).and(ENTRY.SEAL.eq(kept.get().seal())));
    return isThere ? Optional.empty() : Optional.of(new Flaw(Flaw.What.CUT, seq));
  }

  /** The first entry that is missing or is not as it was sealed; empty if the journal is whole. */
  public Optional<BrokenEntry> firstBroken() {
    return database.inSnapshot(
        () -> new Inspection(database.reading(), seals, Optional.empty()).firstBroken());
  }

  /**
   * The whole journal as it is now, or where it is broken.
   *
   * @param keptSeal the seal of an entry that was kept elsewhere and must be in the journal
   */
  public Inspected inspect(Optional<String> keptSeal) {
    return database.inSnapshot(() -> new Inspection(database.reading(), seals, keptSeal).whole());
  }

  /**
   * The seal that an entry with all rows of its facts would have if it had been written as it was
   * read: its own, if it was.
   *
   * @param facts in any order of tables; rows of one table in the order of their lines
   */
  public String sealOf(EntryRecord entry, List<? extends TableRecord<?>> facts) {
    var ordered = new ArrayList<TableRecord<?>>(facts);
    ordered.sort(Comparator.comparing(fact -> fact.getTable().getName()));
    return seals.ofEntry(entry, ordered);
  }

  /** Whether every entry of some kinds, with all rows of its facts, is as it was sealed. */
  boolean areAsSealed(List<String> kinds) {
    return new Survey(database.reading(), seals).isAsSealed(ENTRY.KIND.in(kinds));
  }

  /** Whether a course has so many entries and ends with that one. */
  public boolean endsWith(String course, long entries, EntryRecord last) {
    return courseEnds.isAt(database.reading(), course, entries, last);
  }

  /** Seals the ends of the courses of a record that was written before they were sealed. */
  public void sealEnds() {
    database.inTransaction(
        () -> {
          courseEnds.makeMissing(database.writing());
          return true;
        });
  }

  /** What is wrong with people, preparations, syringes, protocols and the like. */
  public List<Flaw> flawsOfFoundation() {
    return database.inSnapshot(() -> new Survey(database.reading(), seals).foundation());
  }

  /**
   * What is wrong with the chain, and with an entry that a walk over it found broken, if every
   * course rests on it.
   */
  public List<Flaw> flawsOfChain(BrokenEntry found) {
    return database.inSnapshot(
        () -> {
          var survey = new Survey(database.reading(), seals);
          var flaws = new ArrayList<>(survey.chain());
          survey.shared(found.seq()).ifPresent(flaws::add);
          return List.copyOf(flaws);
        });
  }

  private JournalHeadRecord head(DSLContext writing) {
    JournalHeadRecord stored = writing.fetchOne(JOURNAL_HEAD);
    if (stored != null && seals.isSealed(stored)) {
      return stored;
    }
    if (stored == null && !writing.fetchExists(ENTRY)) {
      return new JournalHeadRecord(HEAD_ID, 0L, Seals.BEFORE_THE_FIRST, "");
    }
    throw new IllegalStateException(
        "The journal was changed by another program: stop, and restore a backup");
  }

  private void move(DSLContext writing, EntryRecord last) {
    var head = new JournalHeadRecord();
    head.setId(HEAD_ID);
    head.setSeq(last.getSeq());
    head.setSeal(last.getSeal());
    head.setHeadSeal(seals.ofHead(last.getSeq(), last.getSeal()));
    writing
        .insertInto(JOURNAL_HEAD)
        .set(head)
        .onConflict(JOURNAL_HEAD.ID)
        .doUpdate()
        .set(head)
        .execute();
  }

  private static EntryRecord row(NewEntry entry, JournalHeadRecord head) {
    var row = new EntryRecord();
    row.setSeq(head.getSeq() + 1);
    row.setId(entry.id());
    row.setKind(entry.kind());
    row.setCourseId(entry.course().orElse(null));
    row.setRecordedAt(entry.at().truncatedTo(ChronoUnit.MILLIS));
    row.setRecordedBy(entry.by());
    row.setOnBehalfOf(entry.onBehalfOf().orElse(null));
    row.setCorrects(entry.corrects().orElse(null));
    row.setReason(entry.reason().orElse(null));
    row.setPreviousSeal(head.getSeal());
    return row;
  }

  private static List<TableRecord<?>> prepared(String entryId, TableRecord<?>... facts) {
    for (TableRecord<?> fact : facts) {
      fact.set(FactTables.entryId(fact.getTable()), entryId);
      for (Field<?> field : fact.fields()) {
        if (fact.get(field) instanceof Instant instant) {
          fact.set(field.coerce(Instant.class), instant.truncatedTo(ChronoUnit.MILLIS));
        }
      }
    }
    return List.of(facts).stream()
        .sorted(
            Comparator.<TableRecord<?>, String>comparing(fact -> fact.getTable().getName())
                .thenComparingLong(FactTables::lineOf))
        .toList();
  }
}
