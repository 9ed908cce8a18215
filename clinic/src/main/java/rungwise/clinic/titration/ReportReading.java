package rungwise.clinic.titration;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseHistory;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.Plan;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.PartialRow;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Reads a report form against the course that it is for; all faults at once. */
final class ReportReading {

  private static final TimeSpan CLOSES = DurationLimits.CLOSES_VOLUME.value();
  private static final TimeSpan EMERGENCY = DurationLimits.EMERGENCY.value();

  private final List<String> faults = new ArrayList<>();
  private final List<String> notices = new ArrayList<>();

  private final StandingPorts ports;

  private ReportReading(StandingPorts ports) {
    this.ports = ports;
  }

  static Reading<InjectionReported> of(
      ReportDraft draft, CourseFile file, StandingPorts ports, Instant now) {
    return new ReportReading(ports).read(draft, file, now);
  }

  private Reading<InjectionReported> read(ReportDraft draft, CourseFile file, Instant now) {
    ClinicTime time = ports.time();
    String token = draft.barrel().isBlank() ? barrelOf(draft, file) : draft.barrel();
    Optional<Barrel> barrel = Barrels.of(token);
    if (barrel.isEmpty()) {
      faults.add("There is no such syringe: choose the one he used.");
    }
    Optional<Instant> at = take(time.read(draft.date(), draft.time(), draft.occurrence()));
    at.filter(instant -> instant.isAfter(now))
        .ifPresent(
            instant ->
                faults.add(time.words(instant) + " is still to come: check the date and time."));
    Optional<Volume> drawn = barrel.flatMap(one -> take(DrawnMark.read(draft.mark(), one)));
    Optional<Grade> grade = take(FormChoices.grade(draft.grade()));
    Optional<SoftAfter> soft = soft(draft);
    at.ifPresent(instant -> soft.ifPresent(found -> notLongerThanSince(found, instant, now)));
    InjectionDetails details = new DetailsReading(faults, notices).read(draft.details(), file);
    Optional<SimpleCauses> causes =
        take(FormChoices.causes(draft.causes(), FormChoices.wrong(draft.details().causes())));
    requireReason(draft);
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    PreparationId preparation = preparation(draft, file, at.orElseThrow());
    Optional<DoseSigned> order = orderedAt(file, at.orElseThrow(), preparation);
    return new Reading.Read<>(
        new InjectionReported(
            at.orElseThrow(),
            preparation,
            token,
            drawn.orElseThrow(),
            ordered(order, drawn.orElseThrow(), before(draft, file, at.orElseThrow())),
            grade.orElseThrow(),
            soft.orElseThrow(),
            causes.orElseThrow(),
            place(draft.place(), order),
            draft.corrects().flatMap(entry -> observationOf(file, entry)),
            details),
        notices);
  }

  /** The syringe of the report that is corrected, or the one of the plan. */
  private static String barrelOf(ReportDraft draft, CourseFile file) {
    return draft
        .corrects()
        .flatMap(entry -> reported(file, entry))
        .map(InjectionReported::barrel)
        .orElse(file.plan().barrel());
  }

  /** What he injected stays what it was when it is corrected, whatever is planned since. */
  private PreparationId preparation(ReportDraft draft, CourseFile file, Instant at) {
    PreparationId then =
        draft
            .corrects()
            .flatMap(entry -> reported(file, entry))
            .map(InjectionReported::preparation)
            .orElseGet(() -> file.planAt(at).preparation());
    if (!then.equals(file.plan().preparation())) {
      notices.add(
          "Recorded as an injection of "
              + preparationOf(then)
              + ", which was his preparation at that time.");
    }
    return then;
  }

  private Preparation preparationOf(PreparationId id) {
    return ports.preparations().apply(id).orElseThrow();
  }

  /** The injections before this one, of whatever preparation: another one ends a row. */
  private History before(ReportDraft draft, CourseFile file, Instant at) {
    OptionalLong corrected =
        file.entries().stream()
            .filter(entry -> draft.corrects().equals(Optional.of(entry.id())))
            .mapToLong(CourseEntry::number)
            .findFirst();
    return History.of(
        new CourseHistory(file, report -> Stock.NOT_RECORDED, this::preparationOf)
            .read().injections().stream()
                .filter(one -> one.at().isBefore(at))
                .filter(one -> !corrected.equals(OptionalLong.of(one.entry())))
                .toList());
  }

  /** What was signed for it: the dose, or its next step once the dose had been too little. */
  private Volume ordered(Optional<DoseSigned> order, Volume drawn, History before) {
    return order
        .map(
            signed ->
                signed.nextStep().equals(Optional.of(drawn)) && wasNextStepDue(signed, before)
                    ? drawn
                    : signed.volume())
        .orElse(drawn);
  }

  private boolean wasNextStepDue(DoseSigned signed, History before) {
    Plan plan = signed.plan();
    return before
            .last()
            .filter(one -> one.preparation().id().equals(plan.preparation()))
            .filter(one -> one.drawn().equals(signed.volume()))
            .filter(Injection::wasTooLittle)
            .isPresent()
        && ports
            .protocols()
            .find(plan.protocol(), plan.protocolVersion())
            .filter(found -> PartialRow.isEnough(before, found.protocol()))
            .isPresent();
  }

  private static Optional<InjectionReported> reported(CourseFile file, EntryId entry) {
    return file.reports().stream()
        .filter(written -> written.entry().id().equals(entry))
        .map(CourseFile.Written::fact)
        .findFirst();
  }

  private void requireReason(ReportDraft draft) {
    if (draft.corrects().isPresent() && draft.reason().isBlank()) {
      faults.add("Say why the report is corrected: the first one stays on record beside it.");
    }
  }

  /** Where he was, or where the dose was signed for; at home is the stricter of the two. */
  private static Place place(String typed, Optional<DoseSigned> order) {
    return Arrays.stream(Place.values())
        .filter(one -> one.name().toLowerCase(Locale.ROOT).equals(typed))
        .findFirst()
        .orElse(order.map(DoseSigned::place).orElse(Place.HOME));
  }

  /** An addendum to the report of an observation ends that observation too. */
  private static Optional<EntryId> observationOf(CourseFile file, EntryId corrected) {
    return reported(file, corrected).flatMap(InjectionReported::observation);
  }

  private <T> Optional<T> take(Reading<T> reading) {
    faults.addAll(reading.faults());
    notices.addAll(reading.notices());
    return reading.found();
  }

  private Optional<SoftAfter> soft(ReportDraft draft) {
    return switch (draft.soft()) {
      case "within_2_hours" -> Optional.of(new SoftAfter.Between(TimeSpan.ofMinutes(0), CLOSES));
      case "within_4_hours" -> Optional.of(new SoftAfter.Between(CLOSES, EMERGENCY));
      case "not_within_4_hours" -> Optional.of(new SoftAfter.AtLeast(EMERGENCY));
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

  /** The dose of a preparation that was signed last before an injection, on any syringe. */
  static Optional<DoseSigned> orderedAt(CourseFile file, Instant at, PreparationId preparation) {
    return file.inForce(DoseSigned.class).stream()
        .filter(written -> !written.entry().minute().isAfter(at))
        .map(CourseFile.Written::fact)
        .filter(signed -> signed.plan().preparation().equals(preparation))
        .reduce((earlier, later) -> later);
  }
}
