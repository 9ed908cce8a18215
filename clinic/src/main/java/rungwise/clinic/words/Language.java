package rungwise.clinic.words;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A language in which a man is spoken to. Both write a decimal point, as label and syringe do. */
public enum Language {
  ENGLISH("en", "English", "EEEE, d MMMM yyyy", "d MMMM yyyy"),
  SPANISH("es", "español", "EEEE d 'de' MMMM 'de' yyyy", "d 'de' MMMM 'de' yyyy");

  private final String tag;
  private final String words;
  private final DateTimeFormatter weekday;
  private final DateTimeFormatter day;

  Language(String tag, String words, String weekday, String day) {
    this.tag = tag;
    this.words = words;
    Locale locale = Locale.forLanguageTag(tag);
    this.weekday = DateTimeFormatter.ofPattern(weekday, locale);
    this.day = DateTimeFormatter.ofPattern(day, locale);
  }

  /** Its tag in pages, documents and files (BCP 47). */
  public String tag() {
    return tag;
  }

  /** Its own name. */
  public String words() {
    return words;
  }

  /** "Friday, 5 March 2027". */
  public String weekdayAnd(LocalDate date) {
    return weekday.format(date);
  }

  /** "5 March 2027". */
  public String date(LocalDate date) {
    return day.format(date);
  }

  /** The language of a tag. */
  public static Optional<Language> of(String tag) {
    return Arrays.stream(values()).filter(one -> one.tag.equals(tag)).findFirst();
  }
}
