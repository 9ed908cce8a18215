package rungwise.clinic.sheet;

import java.util.List;
import java.util.stream.Collectors;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.history.Injection;

/** What was injected, where that is not, or may not be, what is planned now. */
final class InjectedWords {

  private InjectedWords() {}

  /** "0.12 mL of alprostadil 40 mcg per mL: alprostadil 4.8 mcg". */
  static String of(Written<InjectionReported> report, CourseState state) {
    return words(report, state.question().history().injections()) + besides(report, state);
  }

  /** What it may have been besides, from nobody knows which vial; empty if that is known. */
  static String besides(Written<InjectionReported> report, CourseState state) {
    List<Injection> others = state.question().history().mayHaveBeen();
    String words = words(report, others);
    return words.isEmpty() ? "" : "; the vial is not known, it may have been " + words;
  }

  private static String words(Written<InjectionReported> report, List<Injection> injections) {
    return injections.stream()
        .filter(one -> one.entry() == report.entry().number())
        .map(InjectedWords::of)
        .collect(Collectors.joining(" or "));
  }

  private static String of(Injection one) {
    return one.drawn()
        + " of "
        + one.preparation().composition()
        + ": "
        + one.preparation().contentOf(one.drawn());
  }
}
