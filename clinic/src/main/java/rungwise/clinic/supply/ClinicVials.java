package rungwise.clinic.supply;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.StandingPorts;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** The use cases of the vials that the clinic keeps for injections at a visit. */
public final class ClinicVials {

  private static final String GONE =
      "This vial is not kept any more, or was changed meanwhile: open the list again.";

  private final StandingPorts ports;
  private final CourseChanges changes;
  private final ClinicVialShelf shelf;

  public ClinicVials(StandingPorts ports, ClinicVialShelf shelf) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.shelf = shelf;
  }

  /** Every vial that is kept still, in the order in which they were written down. */
  public List<ClinicVial> kept() {
    return shelf.kept();
  }

  /** A vial that is kept still. */
  public Optional<ClinicVial> find(String id) {
    return shelf.find(id);
  }

  /** Writes down a vial, as its label says. */
  public Reading<Vial> add(Account actor, VialDraft draft) {
    return write(
        actor,
        now -> {
          Reading<Vial> vial = VialReading.of(draft);
          vial.found().ifPresent(found -> shelf.add(found, actor.id(), now));
          return vial;
        });
  }

  /** Writes an addendum, for example the day on which it was opened. */
  public Reading<Vial> amend(Account actor, String id, VialDraft draft, String reason) {
    return write(
        actor,
        now -> {
          Reading<Vial> vial = VialReading.of(draft);
          var faults = new ArrayList<>(vial.placed());
          faults.addAll(faultsOf(id, reason));
          if (!faults.isEmpty()) {
            return new Reading.Refused<>(faults);
          }
          shelf.amend(
              new ClinicVial(new EntryId(id), vial.orThrow()), actor.id(), now, reason.strip());
          return vial;
        });
  }

  /** It is used up or thrown away. */
  public Reading<Vial> finish(Account actor, String id, String reason) {
    return write(
        actor,
        now -> {
          List<Fault> faults = faultsOf(id, reason);
          if (!faults.isEmpty()) {
            return new Reading.Refused<>(faults);
          }
          Vial vial = shelf.find(id).orElseThrow().vial();
          shelf.finish(new EntryId(id), actor.id(), now, reason.strip());
          return Reading.of(vial);
        });
  }

  private List<Fault> faultsOf(String id, String reason) {
    var faults = new ArrayList<Fault>();
    if (shelf.find(id).isEmpty()) {
      faults.add(Fault.ofForm(GONE));
    }
    if (reason.isBlank()) {
      faults.add(new Fault(CourseChanges.REASON, CourseChanges.REASON_MISSING));
    }
    CourseChanges.textFault(reason, CourseChanges.REASON).ifPresent(faults::add);
    return faults;
  }

  private Reading<Vial> write(Account actor, Function<Instant, Reading<Vial>> work) {
    return By.CLINICIAN.includes(actor)
        ? ports.transactions().inTransaction(() -> work.apply(changes.now()))
        : Reading.refused(By.CLINICIAN.refusal());
  }
}
