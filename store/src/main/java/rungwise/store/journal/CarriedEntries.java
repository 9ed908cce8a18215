package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jooq.TableRecord;
import org.jooq.exception.DataAccessException;
import rungwise.clinic.record.RecordFault;
import rungwise.clinic.record.RecordedEntry;
import rungwise.store.database.Database;
import rungwise.store.schema.tables.records.EntryRecord;

/** The journal's entries as they are carried from one store to another. */
public final class CarriedEntries {

  private final Database database;
  private final Journal journal;

  public CarriedEntries(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  public boolean isEmpty() {
    return !database.reading().fetchExists(ENTRY);
  }

  /** All of them in order, from one snapshot. */
  public void forEach(Consumer<RecordedEntry> each) {
    database.inSnapshot(
        () -> {
          Walk.over(
              database.reading(),
              (entry, facts) ->
                  each.accept(carried(entry, facts.stream().map(FactValues::of).toList())));
          return true;
        });
  }

  private static RecordedEntry carried(EntryRecord entry, List<RecordedEntry.FactRow> facts) {
    return new RecordedEntry(
        entry.getSeq(),
        entry.getId(),
        entry.getKind(),
        Optional.ofNullable(entry.getCourseId()),
        entry.getRecordedAt(),
        entry.getRecordedBy(),
        Optional.ofNullable(entry.getOnBehalfOf()),
        Optional.ofNullable(entry.getCorrects()),
        Optional.ofNullable(entry.getReason()),
        Optional.ofNullable(entry.getClockBelieved()),
        facts);
  }

  /**
   * Appends one, sealed anew.
   *
   * @throws RecordFault if it does not fit
   */
  public void append(RecordedEntry entry) {
    try {
      journal.append(
          new NewEntry(
              entry.id(),
              entry.kind(),
              entry.course(),
              entry.at(),
              entry.by(),
              entry.onBehalfOf(),
              entry.corrects(),
              entry.reason()),
          entry.clock(),
          entry.facts().stream().map(FactValues::row).toArray(TableRecord<?>[]::new));
    } catch (IllegalArgumentException e) {
      throw RecordFault.of(entry.number(), String.valueOf(e.getMessage()), e);
    } catch (DataAccessException e) {
      if (Database.isRefusal(e)) {
        throw RecordFault.of(
            entry.number(), "it does not fit to the entries before it, or lacks a value", e);
      }
      throw e;
    }
  }
}
