package rungwise.clinic.standing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.FlagsSeen;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.TabletTaken;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.Plan;
import rungwise.clinic.standing.ReportFlag.Kind;
import rungwise.dosing.guard.TimeGuards;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * What a prescriber is to look at among the injections on record, worked out anew at each look: a
 * late report or a correction changes it. Each is held against the protocol and the order of its
 * own time.
 */
final class ReportFlags {

  private static final int THIRD = 3;

  private final CourseFile file;
  private final List<Injection> injections;
  private final Function<Plan, Protocol> protocols;
  private final Function<PreparationId, Preparation> preparations;
  private final ClinicTime time;
  private final long seen;
  private final List<ReportFlag> flags = new ArrayList<>();

  ReportFlags(
      CourseFile file,
      List<Injection> injections,
      Function<Plan, Protocol> protocols,
      Function<PreparationId, Preparation> preparations,
      ClinicTime time) {
    this.file = file;
    this.injections = injections;
    this.protocols = protocols;
    this.preparations = preparations;
    this.time = time;
    this.seen = lastSeen(file);
  }

  /** The number of the entry by which a prescriber last saw what was flagged; 0 if none did. */
  static long lastSeen(CourseFile file) {
    return file.inForce(FlagsSeen.class).stream()
        .mapToLong(written -> written.entry().number())
        .max()
        .orElse(0);
  }

  /** All of them, in the order of the injections. */
  List<ReportFlag> read() {
    Map<Long, Written<InjectionReported>> reports =
        file.reports().stream()
            .collect(Collectors.toMap(written -> written.entry().number(), written -> written));
    injections.forEach(
        one -> Optional.ofNullable(reports.get(one.entry())).ifPresent(report -> ask(report, one)));
    return List.copyOf(flags);
  }

  private void ask(Written<InjectionReported> report, Injection one) {
    Protocol protocol = protocols.apply(file.planAt(one.at()));
    order(report, one);
    home(report, one);
    limits(protocol).forEach(limit -> inARow(report, one, limit));
    tablet(report, one, TimeSpan.ofHours(protocol.limits().pde5Hours().value()));
  }

  private void order(Written<InjectionReported> report, Injection one) {
    Optional<DoseSigned> order = file.signedDoseAt(one.at()).map(Written::fact);
    if (order.isEmpty()) {
      add(report, Kind.NOT_SIGNED, List.of(Fact.said("drawn", one.drawn())), one.entry());
      return;
    }
    DoseSigned signed = order.get();
    if (!signedOf(signed).isSameAs(one.preparation())) {
      add(
          report,
          Kind.OTHER_LABEL,
          List.of(
              Fact.said("label", one.preparation().composition()),
              Fact.said("signed", signedOf(signed).composition())),
          one.entry());
    } else if (one.drawn().isMoreThan(most(signed, one))) {
      add(
          report,
          Kind.MORE_THAN_SIGNED,
          List.of(Fact.said("drawn", one.drawn()), Fact.said("signed", most(signed, one))),
          one.entry());
    }
    if (signed.place() == Place.CLINIC && one.isAtHome()) {
      add(
          report,
          Kind.CLINIC_ONLY,
          List.of(Fact.said("signed for the clinic", signed.volume())),
          one.entry());
    }
  }

  /** The signed next step is signed too, once it was due. */
  private static Volume most(DoseSigned signed, Injection one) {
    return signed
        .nextStep()
        .filter(next -> one.ordered().equals(Optional.of(next)))
        .orElse(signed.volume());
  }

  private Preparation signedOf(DoseSigned signed) {
    return preparations.apply(signed.plan().preparation());
  }

  private void home(Written<InjectionReported> report, Injection one) {
    if (!one.isAtHome()) {
      return;
    }
    String missing =
        Readiness.missing(one.preparation(), file.recordedBefore(time.dayOf(one.at())));
    if (!missing.isEmpty()) {
      add(report, Kind.NOT_READY, List.of(Fact.said("not on record then", missing)), one.entry());
    }
  }

  /**
   * What must not come in a row that is shorter than a span.
   *
   * @param place the one that is flagged: the second, the third...
   */
  private record Row(Kind kind, TimeSpan span, int place, List<Fact> limit) {}

  private static List<Row> limits(Protocol protocol) {
    TimeSpan spacing = protocol.limits().spacing().value();
    int most = protocol.limits().inSevenDays().value();
    return List.of(
        new Row(Kind.TOO_SOON, spacing, 2, List.of(Fact.said("smallest time between", spacing))),
        new Row(Kind.THIRD_IN_A_DAY, TimeSpan.ofHours(24), THIRD, List.of()),
        new Row(
            Kind.TOO_MANY_IN_A_WEEK,
            TimeGuards.SEVEN_DAYS,
            most + 1,
            List.of(Fact.said("most allowed", most))));
  }

  private void inARow(Written<InjectionReported> report, Injection one, Row limit) {
    var row = new ArrayList<Injection>();
    for (Injection other : injections.subList(0, injections.lastIndexOf(one) + 1)) {
      if (limit.span().after(other.at()).isAfter(one.at())) {
        row.add(other);
      }
    }
    if (row.size() < limit.place() || !isNews(one, row)) {
      return;
    }
    var facts = new ArrayList<Fact>();
    facts.add(new Fact.Happened("the one before", row.get(row.size() - 2).at()));
    if (limit.place() > 2) {
      facts.add(new Fact.Happened("the first of them", row.getFirst().at()));
    }
    facts.addAll(limit.limit());
    add(report, limit.kind(), facts, row.stream().mapToLong(Injection::entry).max().orElseThrow());
  }

  /**
   * A dose that was watched in the clinic was signed in the face of what was on record: only what
   * was told later is news.
   */
  private static boolean isNews(Injection one, List<Injection> row) {
    return isTold(one)
        || row.stream().anyMatch(other -> isTold(other) && other.entry() > one.entry());
  }

  private static boolean isTold(Injection one) {
    return one.setting() != Injection.Setting.CLINIC_OBSERVED;
  }

  private void tablet(Written<InjectionReported> report, Injection one, TimeSpan hours) {
    new Tablets(file)
        .holding().stream()
            .filter(taken -> isNear(taken.fact(), one.at(), hours))
            .filter(taken -> isTold(one) || taken.entry().number() > one.entry())
            .reduce((earlier, later) -> later)
            .ifPresent(
                taken ->
                    add(
                        report,
                        Kind.TABLET,
                        List.of(
                            new Fact.Happened("tablet", taken.fact().at()),
                            Fact.said("which", taken.fact().tablet().words()),
                            Fact.said("the clinic's own hours between the two", hours)),
                        Math.max(one.entry(), taken.entry().number())));
  }

  private static boolean isNear(TabletTaken taken, Instant injected, TimeSpan hours) {
    return hours.after(taken.at()).isAfter(injected) && hours.after(injected).isAfter(taken.at());
  }

  private void add(Written<InjectionReported> report, Kind kind, List<Fact> facts, long since) {
    flags.add(new ReportFlag(report, kind, facts, since, seen > since, Optional.empty()));
  }
}
