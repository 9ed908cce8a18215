package rungwise.clinic.course;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.Slot;

/** A sheet that says everything that can be said, of an invented man. */
public final class SampleSheet {

  private SampleSheet() {}

  public static HomeSheet spanish() {
    return of(Language.SPANISH, Paper.A4);
  }

  /** Every text, every gap filled with its own name and signs that a format might stumble on. */
  static HomeSheet of(Language language, Paper paper) {
    Map<Slot, String> filling = new EnumMap<>(Slot.class);
    for (Slot slot : Slot.values()) {
      filling.put(slot, "a=b " + slot.name() + " \"'; {name} \u00f1 \u2265");
    }
    filling.remove(Slot.SHEET_CODE);
    return new HomeSheet(
        "00000000-0000-0009-0000-000000000001",
        language,
        paper,
        PatientWords.VERSION,
        "https://sheets.example",
        List.of(PatientWord.values()),
        filling);
  }

  /** In every language, on every paper. */
  static List<HomeSheet> all() {
    return List.of(
        of(Language.ENGLISH, Paper.A4),
        of(Language.ENGLISH, Paper.LETTER),
        of(Language.SPANISH, Paper.A4),
        of(Language.SPANISH, Paper.LETTER));
  }
}
