package rungwise.web.titration;

import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.web.page.VerdictLine;

/** A course's verdicts as the parts of a page show them. */
public final class CourseWords {

  private CourseWords() {}

  /** A verdict, with its class as a shape and a word. */
  public static VerdictLine line(VerdictText verdict) {
    VerdictLine.Kind kind =
        switch (verdict.guardClass()) {
          case HARD_STOP -> VerdictLine.Kind.HARD_STOP;
          case HOLD -> VerdictLine.Kind.HOLD;
          case NOTE -> VerdictLine.Kind.NOTE;
        };
    return new VerdictLine(kind, verdict.sentence(), verdict.next());
  }
}
