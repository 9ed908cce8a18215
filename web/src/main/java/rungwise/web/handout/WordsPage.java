package rungwise.web.handout;

import java.util.Arrays;
import java.util.List;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;

/**
 * Everything that is said to patients, for the prescriber who signs it.
 *
 * @param signed by whom and when this version was signed; empty while it is not
 * @param maySign whether the reader may sign it
 */
public record WordsPage(
    int version, String signed, boolean maySign, List<Line> lines, String notice) {

  /** One text in each language. */
  public record Line(String english, String spanish) {}

  public WordsPage {
    lines = List.copyOf(lines);
  }

  static WordsPage of(String signed, boolean maySign, String notice) {
    return new WordsPage(
        PatientWords.VERSION,
        signed,
        maySign,
        Arrays.stream(PatientWord.values())
            .map(
                word ->
                    new Line(
                        PatientWords.in(Language.ENGLISH).pattern(word),
                        PatientWords.in(Language.SPANISH).pattern(word)))
            .toList(),
        notice);
  }
}
