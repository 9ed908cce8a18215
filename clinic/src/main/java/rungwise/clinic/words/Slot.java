package rungwise.clinic.words;

import java.util.Locale;

/**
 * A gap in a text. What fills it is finished words, with their unit and article: nothing is
 * computed or glued to a unit in a text.
 */
public enum Slot {
  MAN,
  SHEET_CODE,
  SHEET_ID,
  MADE_DAY,
  CLINIC_NUMBER,
  HOSPITAL,
  VOLUME,
  MARK_WORDS,
  SYRINGE,
  CONTENT,
  COMPOSITION,
  RULER_LENGTH,
  NEXT_VOLUME,
  NEXT_MARK_WORDS,
  NEXT_COUNT,
  SOFT_LIMIT,
  WAIT_HOURS,
  MAX_WEEK,
  OWN_ONSET,
  ONSET_FROM,
  ONSET_TO,
  PLACES,
  PLACE_LAST,
  PLACE_NEXT,
  MIX_VOLUME,
  PUSH_SECONDS,
  PRESS_MINUTES,
  AFTER_HOURS_NUMBER,
  TRANSPORT,
  PDE5_HOURS,
  USE_WITHIN_HOURS,
  LAST_DAY,
  IN_USE_DAYS,
  NAME,
  BORN,
  NUMBER,
  COUNT,
  HOUR,
  LEFT_HOURS,
  RIGHT_HOURS,
  FIRST,
  SECOND,
  CHANGED;

  /** As it stands in a text: "{wait_hours}". */
  String written() {
    return "{" + name().toLowerCase(Locale.ROOT) + "}";
  }
}
