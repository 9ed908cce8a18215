package rungwise.clinic.past;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.VialLabels;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Concentration;

/** A course's reports that count, as a history that can be carried elsewhere. */
public final class CourseAsHistory {

  /** What a strength is in relation to, where a preparation holds alprostadil alone. */
  private static final Concentration REFERENCE = Concentration.parse("20 mcg/mL").orThrow();

  private CourseAsHistory() {}

  /**
   * What was brought in for a course and what it reports, numbered in the order of time.
   *
   * @param past the histories of its record number that count
   * @return at most one; none if nothing was injected
   */
  public static Stream<PastHistory> of(
      CourseFile file,
      List<PastHistories.Kept> past,
      Function<PreparationId, Preparation> preparations) {
    var labels = new VialLabels(file, preparations);
    var injections = new ArrayList<PastInjection>();
    past.forEach(kept -> kept.history().injections().forEach(one -> add(injections, one)));
    file.reports().stream()
        .map(CourseFile.Written::fact)
        .sorted(Comparator.comparing(InjectionReported::injectedAt))
        .forEach(report -> add(injections, injection(report, labels.injected(report))));
    return injections.isEmpty()
        ? Stream.empty()
        : Stream.of(
            new PastHistory(
                file.patient().recordNumber(), file.opened().group().token(), injections));
  }

  private static void add(List<PastInjection> all, PastInjection one) {
    int number = all.size() + 1;
    all.add(
        new PastInjection(
            number + 1L,
            number,
            one.volume(),
            one.potency(),
            one.strength(),
            one.grade(),
            one.soft(),
            one.setting(),
            one.named()));
  }

  private static PastInjection injection(InjectionReported report, Preparation injected) {
    return new PastInjection(
        /* line= */ 0,
        /* number= */ 0,
        report.drawn(),
        /* potency= */ 1,
        strength(injected),
        report.grade(),
        report.soft(),
        Optional.of(
            new PastInjection.Setting(report.injectedAt(), injected.id(), report.barrel())));
  }

  /** Only the strengths of one single component stand in an exact relation. */
  private static Optional<Double> strength(Preparation preparation) {
    var all = preparation.ingredients();
    boolean isAlone = all.size() == 1 && all.getFirst().component() == Component.ALPROSTADIL;
    return isAlone ? Optional.of(all.getFirst().strength().ratioTo(REFERENCE)) : Optional.empty();
  }
}
