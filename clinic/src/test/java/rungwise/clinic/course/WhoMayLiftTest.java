package rungwise.clinic.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.CorrectionConfirmed;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ReportWithdrawn;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.standing.CourseHistory;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Over random courses: no report, correction or withdrawal lowers the number of open emergencies or
 * opens a volume, but a correction that says what was possible by the report before, or, for an
 * emergency that was only possible, one that says a known end before 240 minutes. Reviews,
 * confirmations and reopenings, which only a prescriber may write, stand between.
 *
 * <p>What a correction may do is stated here a second time, in plain minutes and microlitres.
 */
final class WhoMayLiftTest {

  private static final int COURSES = 20_000;
  private static final int ENTRIES = 9;
  private static final long SEED = 20_261_129;

  private static final Instant START = Instant.parse("2026-03-02T20:00:00Z");
  private static final AccountId SOMEBODY = AccountId.PROGRAM;
  private static final Preparation WEAK = SamplePreparations.ALPROSTADIL_20;
  private static final Preparation STRONG = SamplePreparations.ALPROSTADIL_40;
  private static final long[] VOLUMES = {100, 250, 500, 1000};
  private static final int[] MINUTES = {20, 45, 60, 61, 90, 119, 120, 150, 239, 240, 260};
  private static final int NEVER = 100_000;

  private int checks = 0;
  private int lifting = 0;

  @Test
  void only_a_prescriber_lifts_a_stop_or_opens_a_volume() {
    for (int course = 0; course < COURSES; course++) {
      new Course(SEED + course).tell();
    }

    assertThat(checks).isGreaterThan(COURSES);
    assertThat(lifting).as("corrections that lift something").isGreaterThan(COURSES / 100);
  }

  private record Dose(PreparationId preparation, long microlitres) {
    long micrograms() {
      return microlitres * (preparation.equals(WEAK.id()) ? 20 : 40);
    }
  }

  /** What a report says, in minutes: it ended at the earliest, and before or at the latest. */
  private record Said(
      Instant at, long micrograms, int earliest, int latest, boolean latestIsIn, int grade) {

    static Said of(InjectionReported report) {
      long strength = report.preparation().equals(WEAK.id()) ? 20 : 40;
      long content = report.drawn().microlitres() * strength;
      int grade = report.grade().number();
      Instant at = report.injectedAt();
      return switch (report.soft()) {
        case SoftAfter.Exactly(TimeSpan one) ->
            new Said(at, content, minutes(one), minutes(one), /* latestIsIn= */ true, grade);
        case SoftAfter.AtLeast(TimeSpan one) ->
            new Said(at, content, minutes(one), NEVER, /* latestIsIn= */ false, grade);
        case SoftAfter.Between(TimeSpan from, TimeSpan before) ->
            new Said(at, content, minutes(from), minutes(before), /* latestIsIn= */ false, grade);
        case SoftAfter.NotKnown notKnown ->
            new Said(at, content, 0, NEVER, /* latestIsIn= */ false, grade);
      };
    }

    private static int minutes(TimeSpan span) {
      return (int) (span.milliseconds() / 60_000);
    }

    private boolean isUnknown() {
      return earliest == 0 && latest == NEVER;
    }

    /** Four hours in so many words: still firm at 30 minutes says nothing yet. */
    boolean says240() {
      return latest == NEVER ? earliest >= 240 : latest > 240 || (latestIsIn && latest == 240);
    }

    /** It lasted, or may have lasted, 2 hours or more after that much or less. */
    boolean closes(long content) {
      boolean isLong = latestIsIn ? latest >= 120 : latest > 120;
      return isLong && !isUnknown() && micrograms <= content;
    }

    boolean isKnownBelow240() {
      return latestIsIn ? latest < 240 : latest <= 240;
    }

    /** Lies inside what was said, of no more drug, at the same time, and no less firm. */
    boolean completes(Said before) {
      boolean endsInside =
          earliest >= before.earliest
              && (latest < before.latest
                  || (latest == before.latest && (before.latestIsIn || !latestIsIn)));
      return at.equals(before.at)
          && endsInside
          && micrograms <= before.micrograms
          && (!isUnknown() || grade >= before.grade);
    }
  }

  /** One course, told entry by entry. */
  private final class Course {
    private final long seed;
    private final SplittableRandom random;
    private final List<CourseEntry> entries = new ArrayList<>();
    private final List<String> story = new ArrayList<>();

    Course(long seed) {
      this.seed = seed;
      this.random = new SplittableRandom(seed);
      var opened = SampleFacts.opened(SampleFacts.PATIENT);
      entries.add(entry(opened, Optional.empty()));
    }

    private CourseEntry entry(CourseFact fact, Optional<EntryId> corrects) {
      long number = entries.size() + 1L;
      return new CourseEntry(
          number,
          new EntryId(new UUID(0, number).toString()),
          START,
          SOMEBODY,
          corrects,
          Optional.of("why"),
          fact);
    }

    private CourseFile file() {
      return new CourseFile(new CourseId("00000000-0000-0000-0000-000000000001"), entries);
    }

    private History history() {
      return new CourseHistory(file(), report -> Stock.NOT_RECORDED, this::preparation).read();
    }

    private Preparation preparation(PreparationId id) {
      return id.equals(WEAK.id()) ? WEAK : STRONG;
    }

    private void append(CourseFact fact, Optional<EntryId> corrects) {
      entries.add(entry(fact, corrects));
      story.add(entries.getLast().number() + " " + corrects + " " + fact);
    }

    void tell() {
      for (int i = 0; i < ENTRIES; i++) {
        List<Written<InjectionReported>> reports = file().reports();
        int what = random.nextInt(10);
        if (what < 3 || reports.isEmpty()) {
          checked(() -> append(report(START.plusSeconds(random.nextInt(40) * 3600L)), noEntry()));
        } else if (what < 7) {
          correct(reports.get(random.nextInt(reports.size())));
        } else if (what < 8) {
          EntryId one = reports.get(random.nextInt(reports.size())).entry().id();
          checked(() -> append(new ReportWithdrawn(), Optional.of(one)));
        } else {
          prescribe();
        }
      }
    }

    private Optional<EntryId> noEntry() {
      return Optional.empty();
    }

    private void prescribe() {
      switch (random.nextInt(4)) {
        case 0 -> append(new EmergencyReviewed(Optional.empty()), noEntry());
        case 1 -> append(new EmergencyReviewed(Optional.of(START)), noEntry());
        case 2 -> append(new VolumeReopened(WEAK.id(), volume()), noEntry());
        default -> {
          List<StruckReport> struck = StruckReport.of(file());
          if (!struck.isEmpty()) {
            EntryId now = struck.get(random.nextInt(struck.size())).now().id();
            append(new CorrectionConfirmed(now), noEntry());
          }
        }
      }
    }

    private void correct(Written<InjectionReported> earlier) {
      Instant at = random.nextInt(4) == 0 ? START : earlier.fact().injectedAt();
      InjectionReported now = report(at);
      Said before = Said.of(earlier.fact());
      Said after = Said.of(now);
      Optional<EntryId> corrects = Optional.of(earlier.entry().id());
      if (!after.completes(before) && !after.isKnownBelow240()) {
        checked(() -> append(now, corrects));
        return;
      }
      History history = history();
      List<Injection> open = history.openEmergencies();
      List<Dose> closed = closed(history);
      append(now, corrects);
      if (history().openEmergencies().size() < open.size()) {
        lifting++;
        assertThat(chain(entries.getLast()).stream().filter(this::waits).toList())
            .as(this::told)
            .isEmpty();
      }
      closed.removeAll(closed(history()));
      for (Dose opened : closed) {
        for (Injection said : before(entries.getLast(), history)) {
          if (isReopened(said, opened)) {
            continue;
          }
          Said one = said(said);
          assertThat(one.closes(opened.micrograms()) && !after.completes(one))
              .as(this::told)
              .isFalse();
        }
      }
    }

    private boolean isReopened(Injection said, Dose dose) {
      return entries.stream()
          .filter(entry -> entry.number() > said.entry())
          .anyMatch(
              entry ->
                  entry.fact() instanceof VolumeReopened(PreparationId id, Volume upTo)
                      && id.equals(dose.preparation())
                      && upTo.microlitres() >= dose.microlitres());
    }

    /** What was said of the same injection before and counted. */
    private List<Injection> before(CourseEntry now, History history) {
      List<Long> chain = chain(now).stream().map(CourseEntry::number).toList();
      return history.everSaid().stream().filter(one -> chain.contains(one.entry())).toList();
    }

    /** The reports that an entry corrects, one after the other. */
    private List<CourseEntry> chain(CourseEntry now) {
      var chain = new ArrayList<CourseEntry>();
      Optional<EntryId> id = now.corrects();
      while (id.isPresent()) {
        CourseEntry earlier = file().entry(id.get());
        chain.add(earlier);
        id = earlier.corrects();
      }
      return chain;
    }

    /** A report said four hours, and no prescriber has reviewed it or confirmed it to be wrong. */
    private boolean waits(CourseEntry report) {
      Said said = Said.of((InjectionReported) report.fact());
      boolean isConfirmed =
          entries.stream()
              .anyMatch(
                  entry ->
                      entry.fact() instanceof CorrectionConfirmed(EntryId correction)
                          && chain(file().entry(correction)).contains(report));
      boolean isReviewed =
          entries.stream()
              .filter(entry -> entry.number() > report.number())
              .anyMatch(
                  entry ->
                      entry.fact() instanceof EmergencyReviewed(Optional<Instant> soft)
                          && (said.latest() != NEVER || soft.isPresent()));
      return said.says240() && !isConfirmed && !isReviewed;
    }

    private Said said(Injection one) {
      CourseFact fact = entries.get((int) one.entry() - 1).fact();
      return Said.of((InjectionReported) fact);
    }

    private void checked(Runnable entry) {
      History before = history();
      entry.run();
      History after = history();
      checks++;
      assertThat(after.openEmergencies().size())
          .as(this::told)
          .isGreaterThanOrEqualTo(before.openEmergencies().size());
      assertThat(closed(after)).as(this::told).containsAll(closed(before));
    }

    private String told() {
      return "seed " + seed + "\n" + String.join("\n", story);
    }

    private List<Dose> closed(History history) {
      var closed = new ArrayList<Dose>();
      for (Preparation one : List.of(WEAK, STRONG)) {
        for (long volume : VOLUMES) {
          if (history.closing(one, Volume.ofMicrolitres(volume)).isPresent()) {
            closed.add(new Dose(one.id(), volume));
          }
        }
      }
      return closed;
    }

    private Volume volume() {
      return Volume.ofMicrolitres(VOLUMES[random.nextInt(VOLUMES.length)]);
    }

    private InjectionReported report(Instant at) {
      Volume drawn = volume();
      return new InjectionReported(
          at,
          (random.nextBoolean() ? WEAK : STRONG).id(),
          "u100-1",
          drawn,
          Optional.of(drawn),
          Grade.of(random.nextInt(5)).orElseThrow(),
          soft(),
          SimpleCauses.NONE_FOUND,
          Place.HOME,
          Optional.empty(),
          InjectionDetails.NONE);
    }

    private SoftAfter soft() {
      int one = random.nextInt(MINUTES.length);
      TimeSpan minutes = TimeSpan.ofMinutes(MINUTES[one]);
      return switch (random.nextInt(4)) {
        case 0 -> new SoftAfter.Exactly(minutes);
        case 1 -> new SoftAfter.AtLeast(minutes);
        case 2 ->
            one + 1 == MINUTES.length
                ? new SoftAfter.NotKnown()
                : new SoftAfter.Between(
                    minutes,
                    TimeSpan.ofMinutes(
                        MINUTES[one + 1 + random.nextInt(MINUTES.length - one - 1)]));
        default -> new SoftAfter.NotKnown();
      };
    }
  }
}
