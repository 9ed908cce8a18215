package rungwise.clinic.course;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.LifeWritten;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.life.LifeWord;

/** Which dose is in force: the last one signed, if nothing after it has ended it. */
final class OrderInForce {

  private OrderInForce() {}

  /**
   * The dose in force.
   *
   * @param isKnown which entries there are
   */
  static Optional<Written<DoseSigned>> of(CourseFile file, Predicate<CourseEntry> isKnown) {
    long ended =
        LongStream.of(
                numberOf(file, PlanChosen.class, isKnown),
                numberOf(file, EmergencyReviewed.class, isKnown),
                numberOf(file, LifeWritten.class, isKnown.and(OrderInForce::isEnd)),
                regrouped(file, isKnown))
            .max()
            .orElseThrow();
    return last(file, DoseSigned.class, isKnown)
        .filter(written -> written.entry().number() > ended);
  }

  private static boolean isEnd(CourseEntry entry) {
    return entry.fact() instanceof LifeWritten life && life.word() instanceof LifeWord.Ended;
  }

  /** The entry by which his group became another one last: the first dose was found by it. */
  private static long regrouped(CourseFile file, Predicate<CourseEntry> isKnown) {
    List<Written<CourseOpened>> all = file.identities();
    long last = 0;
    for (int i = 1; i < all.size(); i++) {
      Written<CourseOpened> one = all.get(i);
      if (one.fact().group() != all.get(i - 1).fact().group() && isKnown.test(one.entry())) {
        last = one.entry().number();
      }
    }
    return last;
  }

  private static long numberOf(
      CourseFile file, Class<? extends CourseFact> kind, Predicate<CourseEntry> isKnown) {
    return last(file, kind, isKnown).map(written -> written.entry().number()).orElse(0L);
  }

  private static <F extends CourseFact> Optional<Written<F>> last(
      CourseFile file, Class<F> kind, Predicate<CourseEntry> isKnown) {
    for (Written<F> written : file.inForce(kind).reversed()) {
      if (isKnown.test(written.entry())) {
        return Optional.of(written);
      }
    }
    return Optional.empty();
  }
}
