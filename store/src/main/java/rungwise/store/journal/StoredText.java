package rungwise.store.journal;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoField;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.impl.SQLDataType;
import org.jspecify.annotations.Nullable;

/**
 * Whether a row stands in the file in the very characters in which this program writes its values.
 * SQLite keeps any text in any column, and reading is lenient: a damaged time may read as the same
 * time.
 */
final class StoredText {

  private static final int DIGITS_OF_A_MILLISECOND = 3;
  private static final String SUFFIX = "_as_stored";
  private static final DateTimeFormatter INSTANT =
      new DateTimeFormatterBuilder()
          .appendPattern("uuuu-MM-dd HH:mm:ss")
          .appendFraction(ChronoField.NANO_OF_SECOND, 0, DIGITS_OF_A_MILLISECOND, true)
          .appendLiteral("+00:00")
          .toFormatter(Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private StoredText() {}

  /** The table's columns, each once as its value and once as its characters. */
  static List<Field<?>> columns(Table<?> table) {
    var columns = new ArrayList<Field<?>>();
    for (Field<?> field : table.fields()) {
      columns.add(field);
      columns.add(field.cast(SQLDataType.CLOB).as(field.getName() + SUFFIX));
    }
    return columns;
  }

  /**
   * Does nothing if the row is as this program writes it.
   *
   * @throws IllegalArgumentException if a column is not
   */
  static void check(Table<?> table, Record row) {
    for (Field<?> field : table.fields()) {
      String stored = row.get(field.getName() + SUFFIX, String.class);
      if (!Objects.equals(stored, written(row.get(field)))) {
        throw new IllegalArgumentException(table.getName() + "." + field.getName());
      }
    }
  }

  private static @Nullable String written(@Nullable Object value) {
    return switch (value) {
      case null -> null;
      case Boolean is -> is ? "1" : "0";
      case Instant instant -> INSTANT.format(instant);
      default -> value.toString();
    };
  }
}
