package rungwise.sheets;

import java.util.List;
import java.util.Map;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.Slot;
import rungwise.drawing.MarkWords;

/** How a man finds a line, in his language. */
record PatientLines(PatientWords words) implements MarkWords.Phrases {

  static PatientLines in(Language language) {
    return new PatientLines(PatientWords.in(language));
  }

  @Override
  public List<String> counts() {
    return List.of(words.text(PatientWord.PART_COUNTS).split(" ", -1));
  }

  @Override
  public String at(String number) {
    return words.text(PatientWord.PART_LINE, Map.of(Slot.NUMBER, number));
  }

  @Override
  public String onePast(String number) {
    return words.text(PatientWord.PART_LINE_ONE_PAST, Map.of(Slot.NUMBER, number));
  }

  @Override
  public String past(String count, String number) {
    return words.text(PatientWord.PART_LINE_PAST, Map.of(Slot.COUNT, count, Slot.NUMBER, number));
  }

  @Override
  public String onePastZero() {
    return words.text(PatientWord.PART_LINE_ONE_PAST_ZERO);
  }

  @Override
  public String pastZero(String count) {
    return words.text(PatientWord.PART_LINE_PAST_ZERO, Map.of(Slot.COUNT, count));
  }
}
