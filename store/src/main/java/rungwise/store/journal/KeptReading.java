package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Select;
import org.jooq.impl.DSL;
import rungwise.store.database.Database;

/**
 * What all entries of some kinds say, kept until there is a later one: every course rests on it, it
 * is little, and an entry never changes. It is kept only where each entry that it was made of was
 * as it was sealed; what was not is read anew at every look.
 *
 * @param <T> immutable
 */
public final class KeptReading<T> {

  /**
   * What was read.
   *
   * @param version the last entry of each kind: no other entry ever has its id again
   * @param value empty if it was not as it was sealed
   */
  private record Known<T>(List<Optional<String>> version, Optional<T> value) {}

  private final Database database;
  private final Journal journal;
  private final List<String> kinds;
  private final Supplier<T> source;
  private volatile Optional<Known<T>> known = Optional.empty();

  /**
   * A reading that has not been made yet.
   *
   * @param kinds of every entry that it is made of
   * @param source reads it, without anything that it kept
   */
  public KeptReading(Database database, Journal journal, List<String> kinds, Supplier<T> source) {
    this.database = database;
    this.journal = journal;
    this.kinds = List.copyOf(kinds);
    this.source = source;
  }

  /** What the entries say now, or in the transaction or snapshot that it is asked in. */
  public T get() {
    return database.inSnapshot(() -> database.onceInSnapshot(this, this::now));
  }

  private T now() {
    List<Optional<String>> version = version();
    Optional<Known<T>> before = known.filter(one -> one.version().equals(version));
    if (before.isPresent()) {
      return before.get().value().orElseGet(source);
    }
    T value = source.get();
    boolean isSealed = journal.areAsSealed(kinds);
    known = Optional.of(new Known<>(version, Optional.of(value).filter(one -> isSealed)));
    return value;
  }

  /** One short look into an index for each kind, in one query. */
  private List<Optional<String>> version() {
    List<? extends Field<String>> last = kinds.stream().map(kind -> DSL.field(last(kind))).toList();
    Record row = database.reading().select(last).fetchSingle();
    return last.stream().map(field -> Optional.ofNullable(row.get(field))).toList();
  }

  private static Select<? extends org.jooq.Record1<String>> last(String kind) {
    return DSL.select(ENTRY.ID)
        .from(ENTRY)
        .where(ENTRY.KIND.eq(kind))
        .orderBy(ENTRY.SEQ.desc())
        .limit(1);
  }
}
