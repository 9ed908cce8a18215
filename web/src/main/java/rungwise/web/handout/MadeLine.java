package rungwise.web.handout;

import java.util.stream.Collectors;
import rungwise.clinic.handout.SheetStanding;
import rungwise.clinic.handout.SheetView;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWords;

/**
 * One sheet that was made, as staff reads it.
 *
 * @param standing whether he may go by it
 * @param isCurrent whether nothing on it has changed
 */
public record MadeLine(SheetView.Made made, String standing, boolean isCurrent) {

  static MadeLine of(SheetView.Made made) {
    return new MadeLine(
        made, words(made.standing()), made.standing() instanceof SheetStanding.Current);
  }

  private static String words(SheetStanding standing) {
    return switch (standing) {
      case SheetStanding.Current current -> "Current";
      case SheetStanding.AskForNew ask ->
          "The dose is current; he needs a new sheet. Changed: " + changed(ask, Language.ENGLISH);
      case SheetStanding.NotCurrent not -> "Not current: he must not go by it";
    };
  }

  /** What has changed, in a language, without any value. */
  static String changed(SheetStanding.AskForNew ask, Language language) {
    return ask.changed().stream()
        .map(change -> PatientWords.in(language).text(change.word()))
        .collect(Collectors.joining(", "));
  }
}
