package rungwise.store.journal;

import java.time.Instant;
import java.time.LocalDate;
import org.jooq.Field;
import org.jooq.Record;

/**
 * The one text of a row, for sealing: the table's name, then "name=value" for each column that
 * holds something, in the table's order. A column that is added later is empty in old rows, so
 * their seals stay right. Values are written as Java reads them, so that a seal survives a move to
 * another database.
 */
final class Canonical {

  private Canonical() {}

  static String text(String table, Record row, Field<?>... without) {
    var text = new StringBuilder(table).append('\n');
    for (Field<?> field : row.fields()) {
      Object value = isIn(field, without) ? null : row.get(field);
      if (value != null) {
        text.append(field.getName()).append('=').append(escaped(words(value))).append('\n');
      }
    }
    return text.toString();
  }

  private static boolean isIn(Field<?> field, Field<?>... fields) {
    for (Field<?> one : fields) {
      if (one.getName().equals(field.getName())) {
        return true;
      }
    }
    return false;
  }

  private static String words(Object value) {
    return switch (value) {
      case String text -> text;
      case Long number -> number.toString();
      case Integer number -> number.toString();
      case Short number -> number.toString();
      case Boolean is -> is.toString();
      case Instant instant -> instant.toString();
      case LocalDate date -> date.toString();
      default -> throw new IllegalArgumentException("bug: a journal column of " + value.getClass());
    };
  }

  /** A line break would end the value early, so it is written as backslash and n. */
  private static String escaped(String value) {
    return value.replace("\\", "\\\\").replace("\n", "\\n");
  }
}
