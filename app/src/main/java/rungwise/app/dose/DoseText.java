package rungwise.app.dose;

import java.util.ArrayList;
import java.util.List;
import rungwise.clinic.dose.DoseAnswer;

/** The answer for a reader: volume, mark, composition and content first, then what to know. */
public final class DoseText {

  private DoseText() {}

  /** The answer, line by line. */
  public static List<String> of(DoseAnswer answer) {
    var lines = new ArrayList<String>();
    lines.add(answer.dose().toString());
    lines.add("");
    lines.add(
        "Drawing error   up to "
            + answer.error().totalPercentWords()
            + " of this dose: half a line's distance and the syringe's tolerance together");
    lines.add(
        "Best read on    " + answer.smallest() + " (--barrel " + answer.smallest().token() + ")");
    answer.notices().forEach(notice -> lines.add("Note            " + notice));
    answer.warnings().forEach(warning -> lines.add("Warning         " + warning));
    DoseAnswer.ALWAYS.forEach(sentence -> lines.add("Remember        " + sentence));
    return List.copyOf(lines);
  }
}
