package rungwise.clinic.beside;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.ElsewhereWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.elsewhere.ElsewhereWord;

/**
 * Which other courses are of the same man.
 *
 * @param joins every course that ever was joined with this one, by its id, as it stands now
 */
public record JoinLog(Map<CourseId, Join> joins) {

  public JoinLog {
    joins = new LinkedHashMap<>(joins);
  }

  /**
   * Another course that was joined.
   *
   * @param since the entry that joined it first
   * @param last the entry that joined it last
   * @param leads whether this course is the one in which he is treated
   * @param until the entry by which it is joined no more; empty while it is
   */
  public record Join(long since, CourseEntry last, boolean leads, Optional<CourseEntry> until) {

    /** Whether it is joined now. */
    public boolean isOpen() {
      return until.isEmpty();
    }
  }

  /** Another course as far as it is read, and from which entry of this one on. */
  public record Read(CourseFile file, long since) {}

  /** What counts of all that was written. */
  public static JoinLog of(CourseFile file) {
    var joins = new LinkedHashMap<CourseId, Join>();
    for (Written<ElsewhereWritten> one : file.inForce(ElsewhereWritten.class)) {
      switch (one.fact().word()) {
        case ElsewhereWord.Joined(String course, boolean leads) ->
            joins.compute(
                new CourseId(course),
                (id, old) ->
                    new Join(
                        old == null ? one.entry().number() : old.since(),
                        one.entry(),
                        leads,
                        Optional.empty()));
        case ElsewhereWord.Parted(String course) ->
            joins.computeIfPresent(
                new CourseId(course),
                (id, old) ->
                    old.isOpen()
                        ? new Join(old.since(), old.last(), old.leads(), Optional.of(one.entry()))
                        : old);
        case ElsewhereWord.Told told -> {}
        case ElsewhereWord.Opened opened -> {}
      }
    }
    return new JoinLog(joins);
  }

  /** Whether he is treated in another course. */
  public boolean follows() {
    return joins.values().stream().anyMatch(one -> one.isOpen() && !one.leads());
  }

  /** The courses that are joined with this one now. */
  public List<CourseId> open() {
    return joins.entrySet().stream()
        .filter(one -> one.getValue().isOpen())
        .map(Map.Entry::getKey)
        .toList();
  }

  /**
   * The other courses of a man, those of them too that are joined with one of those, each up to the
   * entry until which it is read.
   *
   * @param limit the number of the last entry that is read of any
   */
  public static List<Read> others(
      CourseFile file, long limit, Function<CourseId, Optional<CourseFile>> courses) {
    var found = new LinkedHashMap<CourseId, Read>();
    add(file, limit, /* since= */ 0, courses, found);
    return found.values().stream().filter(one -> !one.file().id().equals(file.id())).toList();
  }

  private static void add(
      CourseFile file,
      long limit,
      long since,
      Function<CourseId, Optional<CourseFile>> courses,
      Map<CourseId, Read> found) {
    Read known = found.get(file.id());
    if (known != null && known.file().basis() >= file.basis()) {
      return;
    }
    found.put(file.id(), new Read(file, known == null ? since : Math.min(known.since(), since)));
    for (Map.Entry<CourseId, Join> one : of(file).joins().entrySet()) {
      Join join = one.getValue();
      long until = Math.min(limit, join.until().map(CourseEntry::number).orElse(limit));
      courses
          .apply(one.getKey())
          .filter(other -> other.entries().getFirst().number() <= until)
          .map(other -> other.upTo(until))
          .ifPresent(other -> add(other, until, Math.max(since, join.since()), courses, found));
    }
  }

  /** The number of the last entry of any of them and of the course itself. */
  public static long basis(CourseFile file, Function<CourseId, Optional<CourseFile>> courses) {
    var numbers = new ArrayList<Long>();
    numbers.add(file.basis());
    Stream<Read> others = others(file, Long.MAX_VALUE, courses).stream();
    others.map(one -> one.file().basis()).forEach(numbers::add);
    return numbers.stream().mapToLong(Long::longValue).max().orElseThrow();
  }
}
