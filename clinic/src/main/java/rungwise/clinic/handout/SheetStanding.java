package rungwise.clinic.handout;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWord;

/** Whether a sheet that a man holds in his hand still says what is right. */
public sealed interface SheetStanding {

  /** The language of the sheet. */
  Language language();

  /** It says what a new one would say. */
  record Current(Language language) implements SheetStanding {}

  /** Its dose is in force, and something else on it has changed. */
  record AskForNew(Language language, Set<Change> changed) implements SheetStanding {
    public AskForNew {
      var ordered = EnumSet.noneOf(Change.class);
      ordered.addAll(changed);
      changed = Collections.unmodifiableSet(ordered);
    }
  }

  /** Its dose is not in force, or nobody can tell: he calls before he does anything. */
  record NotCurrent(Language language) implements SheetStanding {}

  /** What has changed since it was made. */
  enum Change {
    VIAL(PatientWord.CHANGED_VIAL),
    TIMES(PatientWord.CHANGED_TIMES),
    PLAN(PatientWord.CHANGED_PLAN),
    PILLS(PatientWord.CHANGED_PILLS),
    WORDS(PatientWord.CHANGED_WORDS),
    OTHER(PatientWord.CHANGED_OTHER);

    private final PatientWord word;

    Change(PatientWord word) {
      this.word = word;
    }

    public PatientWord word() {
      return word;
    }
  }
}
