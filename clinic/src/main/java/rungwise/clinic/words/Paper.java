package rungwise.clinic.words;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A size of paper, in millimetres: A4 (ISO 216) and US Letter (ANSI/ASME Y14.1). */
public enum Paper {
  A4("A4", "210mm 297mm"),
  LETTER("US Letter", "215.9mm 279.4mm");

  private final String words;
  private final String size;

  Paper(String words, String size) {
    this.words = words;
    this.size = size;
  }

  public String words() {
    return words;
  }

  /** Width and height as a style sheet has them. */
  public String size() {
    return size;
  }

  /** Its name in forms and in the record. */
  public String token() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The paper of a name. */
  public static Optional<Paper> of(String token) {
    return Arrays.stream(values()).filter(one -> one.token().equals(token)).findFirst();
  }
}
