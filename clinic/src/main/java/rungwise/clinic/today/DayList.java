package rungwise.clinic.today;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.CannotKeep;
import rungwise.clinic.beside.JoinLog;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.day.Held;
import rungwise.clinic.day.Need;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.titration.Titration;
import rungwise.clinic.today.DayRows.Basis;
import rungwise.clinic.today.DayRows.Counts;
import rungwise.clinic.today.DayRows.Listed;
import rungwise.dosing.Dosing;

/**
 * The day's list. An erection that is not over is read from the record at every look; the others
 * are rows that were kept, and a row that no longer holds keeps its place and says nothing else
 * until it is made anew.
 */
public final class DayList {

  /** How many courses stand on one page. */
  public static final int ON_ONE_PAGE = 100;

  /** After so long an open list is shown anew in any case. */
  private static final Duration LOOKED_AT_AGAIN = Duration.ofMinutes(5);

  /** How many rows are made anew before the list is shown; the others in the background. */
  private static final int AT_ONCE = 20;

  private final StandingPorts ports;
  private final Titration titration;
  private final CourseReader reader;
  private final CourseViews views;
  private final DayRows rows;
  private final Touched touched;

  /**
   * A list over the use cases of courses.
   *
   * @param ports whose courses and transactions are those of {@code touched}
   */
  public DayList(StandingPorts ports, Touched touched, CourseViews views, DayRows rows) {
    touched.then(this::remake);
    this.touched = touched;
    this.ports = ports;
    this.titration = new Titration(ports);
    this.reader = new CourseReader(ports);
    this.views = views;
    this.rows = rows;
  }

  /**
   * One page of the list.
   *
   * @param open the erections of which nobody has said how they ended, the most urgent first
   * @param others other courses, the most worrying first
   * @param number of this page, from 1
   * @param isMadeAnew whether a row was not as it was kept and is made anew
   */
  public record Shown(
      Instant now,
      List<OpenErectionView> open,
      List<Listed> others,
      Counts counts,
      int number,
      boolean isMadeAnew) {
    public Shown {
      open = List.copyOf(open);
      others = List.copyOf(others);
    }

    /** How many pages there are. */
    public int pages() {
      return pagesOf(counts);
    }
  }

  private static int pagesOf(Counts counts) {
    int others = counts.count(need -> true);
    return Math.max(1, Math.ceilDiv(others, ON_ONE_PAGE));
  }

  private Instant now() {
    return ports.clock().instant().truncatedTo(ChronoUnit.MILLIS);
  }

  private Basis basis() {
    return new Basis(
        Dosing.ENGINE_VERSION
            + "/"
            + DayRow.FORM
            + "/"
            + ports.time().zone().getId()
            + "/"
            + ports.clockCheck().belief().token()
            + "/"
            + rows.foundation(),
        now());
  }

  /**
   * A page as it is now.
   *
   * @param first what the reader sees before all else, but for erections that are not over
   * @param number from 1; a page that is not there is the last one
   */
  public Shown page(Set<Need> first, int number) {
    Basis basis = basis();
    renew(basis);
    var open = new ArrayList<OpenErectionView>();
    for (Listed listed : rows.open(basis, ON_ONE_PAGE)) {
      open.addAll(notOver(listed.course()));
    }
    open.sort(Comparator.comparing(OpenErectionView::urgency));
    Counts counts = rows.counts(basis);
    int shown = Math.clamp(number, 1, pagesOf(counts));
    List<Listed> others = rows.others(basis, first, (shown - 1) * ON_ONE_PAGE, ON_ONE_PAGE);
    boolean isMadeAnew = others.stream().anyMatch(one -> one.row().isEmpty());
    return new Shown(basis.now(), open, others, counts, shown, isMadeAnew);
  }

  /**
   * The rows are no record, only kept for speed: where they cannot be written, such as on a damaged
   * page of the file, the list shows what is left and says of the rest that it is being read. The
   * round in the background tries again, and tells.
   */
  private void renew(Basis basis) {
    try {
      if (rows.isAnyMissing()) {
        repair();
      }
      remake(touched.doubted(AT_ONCE), basis.versions());
      remake(rows.due(basis, AT_ONCE), basis.versions());
    } catch (CannotKeep e) {
      throw e;
    } catch (RuntimeException notRenewed) {
      // What does not hold is not shown as if it did: each row says until when it holds.
    }
  }

  private List<OpenErectionView> notOver(CourseId id) {
    try {
      return titration.find(id).flatMap(views::notOver).stream().toList();
    } catch (UnreadableRecord e) {
      return List.of();
    }
  }

  /** Makes rows anew that no longer hold, the most urgent first, and gives their number. */
  public int remakeDue(int most) {
    Basis basis = basis();
    List<CourseId> due = rows.due(basis, most);
    remake(due, basis.versions());
    return due.size();
  }

  /** Looks whether every course has a row that is as it was kept. */
  public int repair() {
    return ports.transactions().inTransaction(rows::repair);
  }

  /** Makes the row of one course anew, and those of the courses that it is joined with. */
  public void remake(CourseId id) {
    Stream<CourseId> joined =
        ports.courses().readable(id).map(JoinLog::of).stream()
            .flatMap(log -> log.joins().keySet().stream());
    remake(Stream.concat(Stream.of(id), joined).toList(), basis().versions());
  }

  /** Read first, and written at once, so that nobody waits for the reading. */
  private void remake(List<CourseId> ids, String versions) {
    List<Made> made = ids.stream().map(this::make).toList();
    if (!made.isEmpty()) {
      ports
          .transactions()
          .inTransaction(
              () -> {
                made.forEach(
                    one ->
                        rows.keep(
                            one.row(), new Basis(versions, one.at()), one.end(), one.words()));
                return true;
              });
    }
  }

  private record Made(DayRow row, Instant at, long end, Set<String> words) {}

  private Made make(CourseId id) {
    long end = rows.endOf(id);
    try {
      Optional<CourseState> state = titration.find(id);
      if (state.isPresent()) {
        CourseState read = state.get();
        return new Made(row(read), read.now(), end, ManWords.of(read.file()));
      }
    } catch (RuntimeException unreadable) {
      // Whatever it is, it hides no other man; the course page says what is left.
    }
    Instant now = now();
    return new Made(DayRow.unreadable(id, now), now, end, Set.of());
  }

  private DayRow row(CourseState state) {
    CourseFile file = state.file();
    var held = new Held(state, ports.time(), day -> reader.byDay(file, state.now(), day));
    return DayRow.of(state, views.dayOf(state), held);
  }

  /**
   * The courses of men whom somebody looks for, as their records say them.
   *
   * @param most that are given; one more is looked for, to know whether there are
   */
  public List<CourseState> found(String typed, int most) {
    List<Set<String>> beginnings = ManWords.typed(typed);
    if (beginnings.isEmpty()) {
      return List.of();
    }
    var found = new ArrayList<CourseState>();
    for (CourseId id : rows.found(beginnings, most)) {
      try {
        titration.find(id).ifPresent(found::add);
      } catch (UnreadableRecord e) {
        // The day's list says that it cannot be read.
      }
    }
    return List.copyOf(found);
  }

  /**
   * Another one once anything was written of any course, and from time to time, as what is said of
   * an hour does not hold for ever. It names no man.
   */
  public String stamp() {
    return rows.last() + "." + now().toEpochMilli() / LOOKED_AT_AGAIN.toMillis();
  }

  /** How many courses there are, and what they need: figures that name no man. */
  public Counts counts() {
    return rows.counts(basis());
  }

  /** How many men may not be found yet, as their rows are still to be made. */
  public int notYetKept() {
    return rows.counts(basis()).due();
  }
}
