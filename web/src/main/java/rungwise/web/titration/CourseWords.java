package rungwise.web.titration;

import java.util.Optional;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.web.page.VerdictLine;
import rungwise.web.page.VerdictLine.Way;

/** A course's verdicts as the parts of a page show them. */
public final class CourseWords {

  private CourseWords() {}

  /** A verdict, with its class as a shape and a word. */
  public static VerdictLine line(VerdictText verdict) {
    return line(verdict, Optional.empty());
  }

  /** The same with a link to where what clears it is written down. */
  public static VerdictLine line(VerdictText verdict, String coursePath) {
    return line(
        verdict,
        ClearingPage.of(verdict.rule())
            .map(page -> new Way(coursePath + page.path(), page.word())));
  }

  private static VerdictLine line(VerdictText verdict, Optional<Way> way) {
    VerdictLine.Kind kind =
        switch (verdict.guardClass()) {
          case HARD_STOP -> VerdictLine.Kind.HARD_STOP;
          case HOLD -> VerdictLine.Kind.HOLD;
          case NOTE -> VerdictLine.Kind.NOTE;
        };
    return new VerdictLine(kind, verdict.sentence(), verdict.next(), way);
  }
}
