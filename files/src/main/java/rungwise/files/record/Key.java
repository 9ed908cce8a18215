package rungwise.files.record;

import java.util.Locale;

/** The keys of an entry, in the order in which they are written. */
enum Key {
  NUMBER,
  ID,
  KIND,
  COURSE,
  AT,
  BY,
  ON_BEHALF_OF,
  CORRECTS,
  REASON,
  CLOCK,
  FACTS;

  String token() {
    return name().toLowerCase(Locale.ROOT);
  }
}
