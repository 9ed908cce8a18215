package rungwise.clinic.handout;

import java.util.Arrays;
import java.util.Optional;
import rungwise.clinic.words.PatientWord;

/** How a vial is kept, as its pharmacy says: it is asked, and never guessed. */
public enum Keeping {
  FRIDGE("in the fridge", PatientWord.SHEET_KEEP_FRIDGE),
  FREEZER("in the freezer until he starts it, then in the fridge", PatientWord.SHEET_KEEP_FROZEN),
  AS_LABELLED("as its label says", PatientWord.SHEET_KEEP_LABEL);

  private final String words;
  private final PatientWord word;

  Keeping(String words, PatientWord word) {
    this.words = words;
    this.word = word;
  }

  public String words() {
    return words;
  }

  /** What he is told. */
  PatientWord word() {
    return word;
  }

  /** The one of a form's value. */
  public static Optional<Keeping> of(String name) {
    return Arrays.stream(values()).filter(one -> one.name().equals(name)).findFirst();
  }
}
