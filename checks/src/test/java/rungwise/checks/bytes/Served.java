package rungwise.checks.bytes;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Supplier;
import rungwise.clinic.audit.TrailSearch;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.store.SqliteStore;

/**
 * What a store gives out, each thing in words. What it gives out with a warning, or not at all
 * because it cannot be read, is told.
 *
 * @param courses the entries of each course that is given out as sound
 * @param others what is given out beside them
 * @param isAnyTold whether anything came with a warning or not at all
 */
record Served(Map<String, String> courses, Map<String, String> others, boolean isAnyTold) {

  private static final int MOST_LINES = 20_000;
  private static final String NONE = "no such course";

  /** Everything, and each of the courses that are known to have been there. */
  static Served by(SqliteStore store, Collection<CourseId> known) {
    var look = new Look();
    look.others(store);
    Set<CourseId> ids = new LinkedHashSet<>(known);
    look.ask(store.courses()::all, ids::addAll);
    ids.forEach(id -> look.course(store, id));
    return new Served(look.courses, look.others, look.isAnyTold);
  }

  /** Whether a course is given out as sound that is not as it was written. */
  boolean isAnyCourseFalse(Served written) {
    return courses.entrySet().stream()
        .filter(one -> !one.getValue().equals(NONE))
        .anyMatch(one -> !one.getValue().equals(written.courses.get(one.getKey())));
  }

  /** Whether a course is not there. */
  boolean isAnyCourseGone() {
    return courses.containsValue(NONE);
  }

  /** Whether anything else that is given out is not as it was written. */
  boolean isAnyOtherFalse(Served written) {
    return others.entrySet().stream()
        .anyMatch(one -> !one.getValue().equals(written.others.get(one.getKey())));
  }

  /** One look at everything. */
  private static final class Look {
    private final Map<String, String> courses = new TreeMap<>();
    private final Map<String, String> others = new TreeMap<>();
    private boolean isAnyTold;

    void others(SqliteStore store) {
      read("accounts", store.accounts()::all);
      read("preparations", store.preparations()::inUse);
      read("syringes", store.syringes()::kept);
      read("protocols", store.protocolShelf()::all);
      read("populations", store.populationShelf()::all);
      read("last day of the room", store.roomDays()::lastClosed);
      read("vials of the clinic", store.clinicVials()::kept);
      read("histories", store.pastHistories()::all);
      read("access", () -> store.takenAccesses().list(Long.MAX_VALUE, MOST_LINES));
      read("trail", () -> store.trail().find(TrailSearch.ALL, Long.MAX_VALUE, MOST_LINES));
      read("clock", store.clockEntries()::newest);
    }

    void read(String what, Supplier<?> question) {
      ask(question, answer -> others.put(what, String.valueOf(answer)));
    }

    <T> void ask(Supplier<T> question, Consumer<T> answer) {
      try {
        answer.accept(question.get());
      } catch (RuntimeException notServed) {
        isAnyTold = true;
      }
    }

    void course(SqliteStore store, CourseId id) {
      ask(() -> store.courses().find(id), found -> add(id, found));
    }

    private void add(CourseId id, Optional<CourseFile> found) {
      if (found.filter(file -> !file.isSound()).isPresent()) {
        isAnyTold = true;
      } else {
        courses.put(id.text(), found.map(file -> file.entries().toString()).orElse(NONE));
      }
    }
  }
}
