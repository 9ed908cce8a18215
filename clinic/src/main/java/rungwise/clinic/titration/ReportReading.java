package rungwise.clinic.titration;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import rungwise.clinic.clock.Present;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.TabletTaken;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.Plan;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseHistory;
import rungwise.clinic.standing.LabelledDose;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.PartialRow;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Volume;

/** Reads a report form against the course that it is for; all faults at once. */
final class ReportReading {

  private final PartFaults faults = new PartFaults();
  private final StandingPorts ports;
  private final ReportDraft draft;
  private final CourseFile file;
  private final Instant now;

  ReportReading(ReportDraft draft, CourseFile file, StandingPorts ports, Instant now) {
    this.ports = ports;
    this.draft = draft;
    this.file = file;
    this.now = now;
  }

  /**
   * What came of it.
   *
   * @param report what is kept; empty if something must be asked back
   * @param tablet a tablet for erections of which he told
   * @param injectedAt when he injected, where that could be read
   * @param mayBeFourHours whether it says, or could mean, 4 hours or still firm
   */
  record Outcome(
      Optional<InjectionReported> report,
      Optional<TabletTaken> tablet,
      List<String> notices,
      List<PartFault> faults,
      Optional<Instant> injectedAt,
      boolean mayBeFourHours) {}

  Outcome read() {
    if (!draft.isIdentified() && draft.corrects().isEmpty()) {
      faults.add(
          ReportPart.IDENTIFIED,
          "Ask him for his birth date and his record number, and confirm that both are right.");
    }
    Present told = ports.present(now);
    Optional<Instant> at = new WhenReading(draft, ports.time(), told, faults).read();
    Optional<Barrel> barrel = barrel();
    Optional<Volume> drawn =
        barrel.flatMap(
            one -> faults.take(ReportPart.MARK, DrawnMark.read(draft.text(ReportPart.MARK), one)));
    Optional<Grade> grade =
        faults.take(ReportPart.GRADE, FormChoices.grade(draft.text(ReportPart.GRADE)));
    var ending = new EndReading(draft, ports.time(), told, faults);
    Optional<SoftAfter> soft = ending.read(at, grade);
    InjectionDetails details = new DetailsReading(draft, faults).read(file, grade, soft);
    Optional<SimpleCauses> causes = causes(grade);
    Optional<TabletTaken> tablet = new TabletReading(ports.time(), told).of(draft, at, faults);
    corrected(at);
    boolean mayBe = ending.mayBeFourHours(at);
    if (!faults.isEmpty()) {
      return new Outcome(Optional.empty(), Optional.empty(), List.of(), faults.faults(), at, mayBe);
    }
    InjectionReported report =
        report(
            at.orElseThrow(),
            barrel.orElseThrow().token(),
            drawn.orElseThrow(),
            new Response(grade.orElseThrow(), soft.orElseThrow(), causes.orElseThrow()),
            details);
    return new Outcome(Optional.of(report), tablet, faults.notices(), List.of(), at, mayBe);
  }

  /** What followed the injection. */
  private record Response(Grade grade, SoftAfter soft, SimpleCauses causes) {}

  private InjectionReported report(
      Instant at, String barrel, Volume drawn, Response response, InjectionDetails details) {
    PreparationId preparation = preparation(at, drawn, details);
    return new InjectionReported(
        at,
        preparation,
        barrel,
        drawn,
        ordered(orderedAt(file, at, preparation), drawn, before(at)),
        response.grade(),
        response.soft(),
        response.causes(),
        place(),
        observation(),
        details);
  }

  private Optional<Barrel> barrel() {
    Optional<Barrel> barrel =
        Barrels.of(draft.has(ReportPart.BARREL) ? draft.text(ReportPart.BARREL) : barrelThen());
    if (barrel.isEmpty()) {
      faults.add(ReportPart.BARREL, "There is no such syringe: choose the one he used.");
    }
    return barrel;
  }

  /** Whether anything went wrong has to be said only where too little happened. */
  private Optional<SimpleCauses> causes(Optional<Grade> grade) {
    boolean isLeftOut = !draft.has(ReportPart.CAUSES) && grade.filter(Grade::isUseful).isPresent();
    String token =
        isLeftOut ? FormChoices.token(SimpleCauses.NOT_ASKED) : draft.text(ReportPart.CAUSES);
    return faults.take(
        ReportPart.CAUSES,
        FormChoices.causes(token, FormChoices.wrong(draft.all(ReportPart.WRONG))));
  }

  /** What must still be so of the report that is corrected, and of no other at that time. */
  private void corrected(Optional<Instant> at) {
    Optional<InjectionReported> earlier = draft.corrects().flatMap(entry -> reported(file, entry));
    if (draft.corrects().isPresent() && !draft.has(ReportPart.REASON)) {
      faults.add(
          ReportPart.REASON,
          "Say why the report is corrected: the first one stays on record beside it.");
    }
    if (draft.corrects().isPresent()) {
      CourseChanges.textFault(draft.text(ReportPart.REASON))
          .ifPresent(fault -> faults.add(ReportPart.REASON, fault));
    }
    if (draft.corrects().isPresent() && earlier.isEmpty()) {
      faults.add(ReportPart.FORM, "The report was corrected meanwhile: open the course again.");
      return;
    }
    if (observation().isPresent() && said() == Place.HOME) {
      faults.add(
          ReportPart.PLACE,
          "This injection was watched in the clinic, as its visit says: choose the clinic. If it"
              + " was another injection, withdraw this report and write that one down.");
    }
    boolean isSame = earlier.map(InjectionReported::injectedAt).equals(at);
    if (at.filter(file::hasInjectionAt).isPresent() && !isSame) {
      faults.add(ReportPart.TIME, CourseChanges.INJECTED_THEN_ALREADY);
    }
  }

  /** The syringe of the report that is corrected, or the one of the plan. */
  private String barrelThen() {
    return draft
        .corrects()
        .flatMap(entry -> reported(file, entry))
        .map(InjectionReported::barrel)
        .orElse(file.plan().barrel());
  }

  /** What the label of the vial says, whatever was planned. */
  private PreparationId preparation(Instant at, Volume drawn, InjectionDetails details) {
    PreparationId planned = planned(at);
    LabelledDose dose =
        LabelledDose.of(ports, file, VialLabels.labelOf(file, details.vial()), planned);
    Optional<String> other = dose.notice(drawn);
    other.ifPresent(faults::notice);
    if (other.isEmpty() && !planned.equals(file.plan().preparation())) {
      faults.notice(
          "Recorded as an injection of "
              + preparationOf(planned)
              + ", which was his preparation at that time.");
    }
    return dose.kept();
  }

  /**
   * What was planned then. Of a report that named no vial it stays what it was when it is
   * corrected, whatever is planned since.
   */
  private PreparationId planned(Instant at) {
    return draft
        .corrects()
        .flatMap(entry -> reported(file, entry))
        .filter(earlier -> earlier.details().vial().isEmpty())
        .map(InjectionReported::preparation)
        .orElseGet(() -> file.planAt(at).preparation());
  }

  private Preparation preparationOf(PreparationId id) {
    return ports.preparations().apply(id).orElseThrow();
  }

  /** The injections before this one, of whatever preparation: another one ends a row. */
  private History before(Instant at) {
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
  private Optional<Volume> ordered(Optional<DoseSigned> order, Volume drawn, History before) {
    return order.map(
        signed ->
            signed.nextStep().equals(Optional.of(drawn)) && wasNextStepDue(signed, before)
                ? drawn
                : signed.volume());
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

  static Optional<InjectionReported> reported(CourseFile file, EntryId entry) {
    return file.reports().stream()
        .filter(written -> written.entry().id().equals(entry))
        .map(CourseFile.Written::fact)
        .findFirst();
  }

  /** A report is of an injection at home unless it, or the one that it corrects, says otherwise. */
  private Place place() {
    Place place = said();
    if (place == Place.CLINIC && observation().isEmpty()) {
      faults.notice(
          "Kept as told of the clinic. It does not count as a dose given in the clinic: only one"
              + " that is watched there and written down at the visit does.");
    }
    return place;
  }

  private Place said() {
    return Arrays.stream(Place.values())
        .filter(one -> one.name().toLowerCase(Locale.ROOT).equals(draft.text(ReportPart.PLACE)))
        .findFirst()
        .orElseGet(
            () ->
                draft
                    .corrects()
                    .flatMap(entry -> reported(file, entry))
                    .map(InjectionReported::place)
                    .orElse(Place.HOME));
  }

  /** An addendum to the report of an observation ends that observation too. */
  private Optional<EntryId> observation() {
    return draft
        .corrects()
        .flatMap(corrected -> reported(file, corrected))
        .flatMap(InjectionReported::observation);
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
