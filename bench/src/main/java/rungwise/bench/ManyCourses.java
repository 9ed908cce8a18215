package rungwise.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.StoryClock;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Patient;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.quantities.TimeSpan;
import rungwise.store.SqliteStore;

/**
 * Makes a clinic of many courses of 8 injections in a folder, from a seed: each is written through
 * the append, with its seals, like the settled course of the invented clinic, at other times and
 * with other responses.
 */
public final class ManyCourses {

  private static final int IN_ONE_TRANSACTION = 1000;
  private static final int INJECTIONS = 8;
  private static final int MOST_DAYS_EARLIER = 30;
  private static final int OLDEST = 30_000;
  private static final String LIKE = "HL-1017";
  private static final List<String> GIVEN =
      List.of("Arvid", "Basil", "Caspar", "Derek", "Édouard", "Fabio", "Göran", "Hector");
  private static final List<String> FAMILY =
      List.of("Ashdown", "Brânză", "Castel", "Dufour", "Enqvist", "Fairlie", "Gößling", "Holm");

  private final SqliteStore store;
  private final SplittableRandom random;
  private final CourseFile like;

  private ManyCourses(SqliteStore store, CourseFile like, long seed) {
    this.store = store;
    this.like = like;
    this.random = new SplittableRandom(seed);
  }

  /** Fills an empty folder: the invented clinic and so many courses more. */
  public static void fill(Path folder, int courses, long seed) {
    var clock = new StoryClock(InstantSource.system());
    try (OpenClinic clinic = OpenClinic.in(folder, clock)) {
      DemoClinic.fill(clinic, clock, ZoneOffset.UTC);
    }
    try (SqliteStore store = SqliteStore.open(folder)) {
      CourseFile like =
          store.courses().all().stream()
              .flatMap(id -> store.courses().find(id).stream())
              .filter(file -> file.patient().recordNumber().equals(LIKE))
              .findFirst()
              .orElseThrow();
      var many = new ManyCourses(store, like, seed);
      for (int made = 0; made < courses; made += IN_ONE_TRANSACTION) {
        many.write(made, Math.min(courses, made + IN_ONE_TRANSACTION));
      }
    }
  }

  private void write(int from, int to) {
    store
        .transactions()
        .inTransaction(
            () -> {
              for (int number = from; number < to; number++) {
                course(number);
              }
              return true;
            });
  }

  private void course(int number) {
    var id = new CourseId(new UUID(random.nextLong(), random.nextLong()).toString());
    var earlier =
        Duration.ofDays(random.nextInt(MOST_DAYS_EARLIER)).plusMinutes(random.nextInt(720));
    long last = 0;
    int injections = 0;
    for (CourseEntry entry : like.entries()) {
      boolean isReport = entry.fact() instanceof InjectionReported;
      if (isLeftOut(entry) || (isReport && injections == INJECTIONS)) {
        continue;
      }
      injections += isReport ? 1 : 0;
      CourseFact fact = fact(entry.fact(), number, earlier, last);
      last =
          store
              .courses()
              .append(NewEntry.of(id, fact, entry.recordedBy(), entry.recordedAt().minus(earlier)));
    }
  }

  /** What names another entry. */
  private static boolean isLeftOut(CourseEntry entry) {
    return entry.corrects().isPresent()
        || entry.fact() instanceof ObservationStarted
        || entry.fact() instanceof ObservationNoted;
  }

  private CourseFact fact(CourseFact fact, int number, Duration earlier, long last) {
    return switch (fact) {
      case CourseOpened opened -> new CourseOpened(man(number), opened.group());
      case InjectionReported report -> reported(report, report.injectedAt().minus(earlier));
      case DoseSigned signed ->
          new DoseSigned(
              signed.plan(),
              signed.volume(),
              signed.place(),
              signed.rungs(),
              signed.ceiling(),
              signed.overridden(),
              signed.changed(),
              last,
              signed.askedAt().minus(earlier),
              signed.advice(),
              signed.nextStep(),
              signed.accepted());
      default -> fact;
    };
  }

  private InjectionReported reported(InjectionReported report, Instant at) {
    return new InjectionReported(
        at,
        report.preparation(),
        report.barrel(),
        report.drawn(),
        report.ordered(),
        Grade.of(random.nextInt(1, 5)).orElseThrow(),
        new SoftAfter.Exactly(TimeSpan.ofMinutes(random.nextInt(15, 60))),
        report.causes(),
        report.place(),
        Optional.empty(),
        InjectionDetails.NONE);
  }

  private Patient man(int number) {
    String name =
        GIVEN.get(random.nextInt(GIVEN.size()))
            + " "
            + FAMILY.get(random.nextInt(FAMILY.size()))
            + "-"
            + Integer.toString(number, Character.MAX_RADIX).toUpperCase(Locale.ROOT);
    return new Patient(
        name, LocalDate.EPOCH.minusDays(random.nextInt(OLDEST)), "MC-" + (100_000 + number));
  }
}
