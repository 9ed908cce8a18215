package rungwise.web.handout;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.clinic.handout.SheetStanding;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.Slot;

/**
 * The page by which anybody who holds a sheet learns whether it is current. It names no man and no
 * dose.
 *
 * @param code as it was typed
 * @param answers what is said, in the language of the sheet, or in all where that is not known
 */
public record CurrentPage(String code, Sign sign, List<Said> answers, List<Said> long4) {

  /** What stands beside the answer. */
  public enum Sign {
    NOT_ASKED,
    CURRENT,
    ASK_FOR_NEW,
    CALL
  }

  /** A sentence with the language that it is in. */
  public record Said(String lang, String text) {}

  public CurrentPage {
    answers = List.copyOf(answers);
    long4 = List.copyOf(long4);
  }

  static CurrentPage empty() {
    return new CurrentPage("", Sign.NOT_ASKED, inAll(PatientWord.CHECK_ASK), hours());
  }

  static CurrentPage busy(String code) {
    return new CurrentPage(code, Sign.CALL, inAll(PatientWord.CHECK_BUSY), hours());
  }

  static CurrentPage of(String code, Optional<SheetStanding> standing) {
    if (standing.isEmpty()) {
      return new CurrentPage(code, Sign.CALL, inAll(PatientWord.CHECK_UNKNOWN), hours());
    }
    Language language = standing.get().language();
    PatientWords words = PatientWords.in(language);
    return switch (standing.get()) {
      case SheetStanding.Current current ->
          new CurrentPage(
              code, Sign.CURRENT, in(language, words.text(PatientWord.CHECK_CURRENT)), hours());
      case SheetStanding.AskForNew ask ->
          new CurrentPage(
              code,
              Sign.ASK_FOR_NEW,
              in(
                  language,
                  words.text(
                      PatientWord.CHECK_NEW,
                      Map.of(Slot.CHANGED, MadeLine.changed(ask, language)))),
              hours());
      case SheetStanding.NotCurrent not ->
          new CurrentPage(
              code, Sign.CALL, in(language, words.text(PatientWord.CHECK_NOT)), hours());
    };
  }

  private static List<Said> in(Language language, String text) {
    return List.of(new Said(language.tag(), text));
  }

  private static List<Said> hours() {
    return inAll(PatientWord.CHECK_LONG);
  }

  /** One text in every language. */
  public static List<Said> inAll(PatientWord word) {
    return Arrays.stream(Language.values())
        .map(one -> new Said(one.tag(), PatientWords.in(one).text(word)))
        .toList();
  }

  public List<Said> title() {
    return inAll(PatientWord.CHECK_HEAD_MAIN);
  }

  public List<Said> label() {
    return inAll(PatientWord.CHECK_CODE);
  }

  /** The button, in every language. */
  public String send() {
    return inAll(PatientWord.CHECK_SEND).stream()
        .map(Said::text)
        .collect(Collectors.joining(" / "));
  }

  public boolean isAsked() {
    return sign != Sign.NOT_ASKED;
  }
}
