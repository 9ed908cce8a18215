package rungwise.files.history;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The columns of a history file. */
enum Column {
  PATIENT,
  GROUP,
  INJECTION,
  VOLUME_ML,
  POTENCY,
  STRENGTH,
  GRADE,
  DURATION_MIN,
  DURATION_STATUS,
  DURATION_UPPER_MIN,
  TIME,
  PREPARATION,
  BARREL;

  /** The name in the header. */
  String token() {
    return name().toLowerCase(Locale.ROOT);
  }

  boolean isRequired() {
    return compareTo(DURATION_UPPER_MIN) <= 0;
  }

  static Stream<Column> required() {
    return Arrays.stream(values()).filter(Column::isRequired);
  }

  static Optional<Column> of(String token) {
    return Arrays.stream(values()).filter(column -> column.token().equals(token)).findFirst();
  }

  /** What the header may hold, for a message. */
  static String known() {
    return required().map(Column::token).collect(Collectors.joining(","))
        + " and, where known, time,preparation,barrel";
  }
}
