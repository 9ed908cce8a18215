package rungwise.clinic.titration;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.Plan;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Marking;
import rungwise.dosing.known.UnitScale;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Reads a report form against the course that it is for; all faults at once. */
final class ReportReading {

  private final List<String> faults = new ArrayList<>();
  private final List<String> notices = new ArrayList<>();

  private ReportReading() {}

  static Reading<InjectionReported> of(
      ReportDraft draft, CourseFile file, ClinicTime time, Instant now) {
    return new ReportReading().read(draft, file, time, now);
  }

  private Reading<InjectionReported> read(
      ReportDraft draft, CourseFile file, ClinicTime time, Instant now) {
    Plan plan = file.plan();
    Barrel barrel = Barrels.of(plan.barrel()).orElseThrow();
    Optional<Instant> at = take(time.read(draft.date(), draft.time(), draft.occurrence()));
    at.filter(instant -> instant.isAfter(now))
        .ifPresent(
            instant ->
                faults.add(time.words(instant) + " is still to come: check the date and time."));
    Optional<Volume> drawn = take(drawn(draft.mark(), barrel));
    Optional<Grade> grade = grade(draft.grade());
    Optional<SoftAfter> soft = soft(draft);
    at.ifPresent(instant -> soft.ifPresent(found -> notLongerThanSince(found, instant, now)));
    Optional<SimpleCauses> causes = causes(draft.causes());
    if (draft.corrects().isPresent() && draft.reason().isBlank()) {
      faults.add("Say why the report is corrected: the first one stays on record beside it.");
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    Volume ordered =
        orderedAt(file, at.orElseThrow()).map(DoseSigned::volume).orElse(drawn.orElseThrow());
    return new Reading.Read<>(
        new InjectionReported(
            at.orElseThrow(),
            plan.preparation(),
            plan.barrel(),
            drawn.orElseThrow(),
            ordered,
            grade.orElseThrow(),
            soft.orElseThrow(),
            causes.orElseThrow()),
        notices);
  }

  private <T> Optional<T> take(Reading<T> reading) {
    faults.addAll(reading.faults());
    notices.addAll(reading.notices());
    return reading.found();
  }

  private static Reading<Volume> drawn(String text, Barrel barrel) {
    Reading<Volume> volume =
        switch (barrel.marking()) {
          case Marking.UnitLines lines -> MarkNumber.parse(text).map(UnitScale.U_100::volumeAt);
          case Marking.MillilitreLines lines -> Volume.parseMillilitres(text);
          case Marking.NoLines none -> Volume.parseMillilitres(text);
        };
    boolean tooMuch = volume.found().filter(one -> one.isMoreThan(barrel.capacity())).isPresent();
    return tooMuch
        ? Reading.refused("A " + barrel + " does not reach to " + text + ": ask again.")
        : volume;
  }

  private Optional<Grade> grade(String text) {
    Optional<Grade> grade =
        Arrays.stream(Grade.values())
            .filter(one -> Integer.toString(one.number()).equals(text.strip()))
            .findFirst();
    if (grade.isEmpty()) {
      faults.add("Choose how firm it was, from nothing happened to fully firm.");
    }
    return grade;
  }

  private Optional<SoftAfter> soft(ReportDraft draft) {
    return switch (draft.soft()) {
      case "exactly" -> take(TimeSpan.parseMinutes(draft.minutes())).map(SoftAfter.Exactly::new);
      case "at_least" -> take(TimeSpan.parseMinutes(draft.minutes())).map(SoftAfter.AtLeast::new);
      case "between" -> between(draft);
      case "not_known" -> Optional.of(new SoftAfter.NotKnown());
      default -> {
        faults.add("Choose when it was soft again, or that it is not known.");
        yield Optional.empty();
      }
    };
  }

  private Optional<SoftAfter> between(ReportDraft draft) {
    Optional<TimeSpan> from =
        draft.fromMinutes().strip().equals("0")
            ? Optional.of(TimeSpan.ofMinutes(0))
            : take(TimeSpan.parseMinutes(draft.fromMinutes()));
    Optional<TimeSpan> before = take(TimeSpan.parseMinutes(draft.beforeMinutes()));
    if (from.isEmpty() || before.isEmpty()) {
      return Optional.empty();
    }
    if (!before.get().isMoreThan(from.get())) {
      faults.add(
          "Soft between "
              + from.get()
              + " and "
              + before.get()
              + " cannot be: the second time must be the later one.");
      return Optional.empty();
    }
    return Optional.of(new SoftAfter.Between(from.get(), before.get()));
  }

  /** It cannot have lasted longer than it is ago. */
  private void notLongerThanSince(SoftAfter soft, Instant at, Instant now) {
    if (at.isAfter(now)) {
      return;
    }
    TimeSpan since = TimeSpan.between(at, now);
    Optional<TimeSpan> known =
        switch (soft) {
          case SoftAfter.Exactly exactly -> Optional.of(exactly.duration());
          case SoftAfter.AtLeast atLeast -> Optional.of(atLeast.duration());
          case SoftAfter.Between between -> Optional.of(between.from());
          case SoftAfter.NotKnown notKnown -> Optional.empty();
        };
    known
        .filter(duration -> duration.isMoreThan(since))
        .ifPresent(
            duration ->
                faults.add(
                    "It cannot have lasted "
                        + duration
                        + ": the injection was "
                        + since
                        + " ago. Check the time of the injection and the minutes."));
  }

  private Optional<SimpleCauses> causes(String token) {
    Optional<SimpleCauses> causes =
        Arrays.stream(SimpleCauses.values())
            .filter(one -> one.name().toLowerCase(Locale.ROOT).equals(token))
            .findFirst();
    if (causes.isEmpty()) {
      faults.add("Choose whether anything went wrong with the injection, or that nobody asked.");
    }
    return causes;
  }

  /** The dose of this preparation that was signed last before an injection, on any syringe. */
  private static Optional<DoseSigned> orderedAt(CourseFile file, Instant at) {
    return file.inForce(DoseSigned.class).stream()
        .filter(written -> !minuteOf(written.entry().recordedAt()).isAfter(at))
        .map(CourseFile.Written::fact)
        .filter(signed -> signed.plan().preparation().equals(file.plan().preparation()))
        .reduce((earlier, later) -> later);
  }

  /** A form's time has no seconds, so a signature of the same minute came first. */
  private static Instant minuteOf(Instant instant) {
    return instant.truncatedTo(ChronoUnit.MINUTES);
  }
}
