package rungwise.clinic.today;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.function.Supplier;
import rungwise.clinic.Transactions;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Patient;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.clinic.words.SheetCode;

/**
 * Courses and transactions that have something done about each course that was appended to, at the
 * end of the same transaction; if that fails the rest is kept all the same. They notice, too, which
 * courses were read that are not as they were written.
 */
public final class Touched {

  private final Courses courses;
  private final Transactions transactions;
  private final ScopedValue<Set<CourseId>> touched = ScopedValue.newInstance();
  private final Set<CourseId> doubted = ConcurrentHashMap.newKeySet();
  private volatile Consumer<CourseId> then = id -> {};

  public Touched(Courses courses, Transactions transactions) {
    this.courses = courses;
    this.transactions = transactions;
  }

  /** What is done about each. */
  public void then(Consumer<CourseId> action) {
    then = action;
  }

  /** Courses that somebody read since and that were not as they were written; each is told once. */
  List<CourseId> doubted(int most) {
    List<CourseId> some = doubted.stream().limit(most).toList();
    some.forEach(doubted::remove);
    return some;
  }

  private void act(Set<CourseId> all) {
    for (CourseId id : List.copyOf(all)) {
      try {
        then.accept(id);
      } catch (RuntimeException leftForLater) {
        // The append has marked its row as due, so it is made anew soon and believed until then
        // by nobody.
      }
    }
  }

  /** The transactions. */
  public Transactions transactions() {
    return new Transactions() {
      @Override
      public <T> T inTransaction(Supplier<T> work) {
        return touched.isBound() ? transactions.inTransaction(work) : outermost(work);
      }

      @Override
      public <T> T reading(Supplier<T> work) {
        return transactions.reading(work);
      }
    };
  }

  private <T> T outermost(Supplier<T> work) {
    var all = new LinkedHashSet<CourseId>();
    return ScopedValue.where(touched, all)
        .call(
            () ->
                transactions.inTransaction(
                    () -> {
                      T result = work.get();
                      act(all);
                      return result;
                    }));
  }

  /** The courses. */
  public Courses courses() {
    return new Watched();
  }

  private final class Watched implements Courses {
    @Override
    public List<CourseId> all() {
      return courses.all();
    }

    @Override
    public Optional<CourseId> withSheet(SheetCode code) {
      return courses.withSheet(code);
    }

    @Override
    public List<CourseId> underObservation() {
      return courses.underObservation();
    }

    @Override
    public List<CourseId> leftWhileFirm() {
      return courses.leftWhileFirm();
    }

    @Override
    public Optional<CourseFile> find(CourseId id) {
      try {
        Optional<CourseFile> file = courses.find(id);
        file.filter(one -> !one.isSound()).ifPresent(one -> doubted.add(id));
        return file;
      } catch (UnreadableRecord unreadable) {
        doubted.add(id);
        throw unreadable;
      }
    }

    @Override
    public List<CourseId> alike(Patient patient) {
      return courses.alike(patient);
    }

    @Override
    public List<CourseId> namedLike(Patient patient) {
      return courses.namedLike(patient);
    }

    @Override
    public long append(NewEntry entry) {
      if (touched.isBound()) {
        touched.get().add(entry.course());
      }
      return courses.append(entry);
    }
  }
}
