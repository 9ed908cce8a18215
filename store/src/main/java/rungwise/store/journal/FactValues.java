package rungwise.store.journal;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jooq.Field;
import org.jooq.Table;
import org.jooq.TableRecord;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.record.RecordedEntry.FactRow;

/** Rows of fact tables as values that can be carried, and back. */
final class FactValues {

  private FactValues() {}

  static FactRow of(TableRecord<?> row) {
    var values = new LinkedHashMap<String, Object>();
    for (Field<?> field : row.fields()) {
      Object value = row.get(field);
      if (value != null && !field.equals(FactTables.entryId(row.getTable()))) {
        values.put(field.getName(), carried(value));
      }
    }
    return new FactRow(row.getTable().getName(), values);
  }

  private static Object carried(Object value) {
    return switch (value) {
      case Boolean is -> is;
      case Number number -> number.longValue();
      default -> value.toString();
    };
  }

  /**
   * The row that these values are.
   *
   * @throws IllegalArgumentException if there is no such table or column, or a value does not fit
   */
  static TableRecord<?> row(FactRow fact) {
    Table<?> table =
        FactTables.all().stream()
            .filter(one -> one.getName().equals(fact.name()))
            .findFirst()
            .orElseThrow(
                () -> new IllegalArgumentException("nothing is called \"" + fact.name() + "\""));
    var row = (TableRecord<?>) table.newRecord();
    for (Map.Entry<String, Object> value : fact.values().entrySet()) {
      Field<?> field = table.field(value.getKey());
      if (field == null || field.equals(FactTables.entryId(table))) {
        throw new IllegalArgumentException(fact.name() + " has no \"" + value.getKey() + "\"");
      }
      set(row, field, value.getValue());
    }
    return row;
  }

  private static <T> void set(TableRecord<?> row, Field<T> field, Object value) {
    Object read = read(field.getType(), value);
    int longest = field.getDataType().length();
    boolean isTooLong = longest > 0 && read instanceof String text && text.length() > longest;
    if (read == null || isTooLong) {
      throw new IllegalArgumentException(
          row.getTable().getName() + "." + field.getName() + " does not hold what is given");
    }
    row.set(field, field.getType().cast(read));
  }

  private static @Nullable Object read(Class<?> type, Object value) {
    return switch (value) {
      case Boolean is -> type == Boolean.class ? is : null;
      case Long number -> number(type, number);
      case String text -> text(type, text).orElse(null);
      default -> null;
    };
  }

  private static @Nullable Object number(Class<?> type, long number) {
    if (type == Long.class) {
      return number;
    }
    if (type == Integer.class && (int) number == number) {
      return (int) number;
    }
    return type == Short.class && (short) number == number ? (Object) (short) number : null;
  }

  private static Optional<Object> text(Class<?> type, String text) {
    try {
      if (type == String.class) {
        return Optional.of(text);
      }
      if (type == LocalDate.class) {
        return Optional.of(LocalDate.parse(text));
      }
      Instant instant = Instant.parse(text);
      return type == Instant.class && instant.equals(instant.truncatedTo(ChronoUnit.MILLIS))
          ? Optional.of(instant)
          : Optional.empty();
    } catch (DateTimeException notATime) {
      return Optional.empty();
    }
  }
}
