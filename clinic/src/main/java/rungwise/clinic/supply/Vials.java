package rungwise.clinic.supply;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.befell.VialWord;
import rungwise.clinic.course.CourseFact.VialBefell;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.keeping.VialLife;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.standing.VialUse;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** The use cases of a man's vials: what the label says, and when it was opened. */
public final class Vials {

  private static final String AMENDED = "The vial was amended meanwhile: open the course again.";

  private static final String NOTHING_TO_JUDGE =
      "Nothing stands against this vial: nothing was changed.";

  private final StandingPorts ports;
  private final CourseChanges changes;
  private final CourseReader reader;

  public Vials(StandingPorts ports) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.reader = new CourseReader(ports);
  }

  /** Writes down a vial that was dispensed to him. A label that differs is kept, and told. */
  public Reading<Long> receive(Account actor, CourseId id, VialDraft draft) {
    return keep(actor, id, draft, Optional.empty(), "");
  }

  /** Writes an addendum to a vial, for example the day on which it was opened. */
  public Reading<Long> amend(
      Account actor, CourseId id, EntryId vial, VialDraft draft, String reason) {
    return keep(actor, id, draft, Optional.of(vial), reason);
  }

  /** Until when each vial of a course may be used, by the entry that says so. */
  public Map<EntryId, VialUse> uses(CourseFile file) {
    return reader.vialUses(file);
  }

  /** Writes down what befell a vial of his. */
  public Reading<Long> befell(Account actor, CourseId id, EntryId vial, BefellDraft draft) {
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) ->
            isMissing(file, vial)
                ? Reading.refused(AMENDED)
                : switch (BefellReading.of(draft, ports.time().dayOf(now))) {
                  case Reading.Read<VialWord> word ->
                      write(actor, file, vial, word.value(), draft.reason(), now);
                  case Reading.Refused<VialWord> refused -> new Reading.Refused<>(refused.placed());
                });
  }

  /**
   * A prescriber says that a vial may be used as its label says, whatever befell it before.
   *
   * @param basis the number of the last entry that was shown
   */
  public Reading<Long> judge(Account actor, CourseId id, EntryId vial, long basis, String reason) {
    return changes.changeSeen(
        actor,
        id,
        basis,
        (file, now) -> {
          if (isMissing(file, vial)) {
            return Reading.refused(AMENDED);
          }
          return VialLife.of(file, file.rootOf(file.entry(vial))).standing().isEmpty()
              ? Reading.refused(NOTHING_TO_JUDGE)
              : write(actor, file, vial, new VialWord.Judged(), reason, now);
        });
  }

  private Reading<Long> write(
      Account actor, CourseFile file, EntryId vial, VialWord word, String reason, Instant now) {
    var fact = new VialBefell(file.rootOf(file.entry(vial)), word);
    return changes.appendWithReason(file.id(), fact, actor, now, Optional.empty(), reason);
  }

  private Reading<Long> keep(
      Account actor, CourseId id, VialDraft draft, Optional<EntryId> corrects, String reason) {
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> {
          Reading<Vial> vial = VialReading.of(draft);
          var faults = new ArrayList<>(vial.placed());
          corrects
              .filter(entry -> isMissing(file, entry))
              .ifPresent(entry -> faults.add(Fault.ofForm(AMENDED)));
          if (corrects.isPresent() && reason.isBlank()) {
            faults.add(new Fault(CourseChanges.REASON, CourseChanges.REASON_MISSING));
          }
          if (!faults.isEmpty()) {
            return new Reading.Refused<>(faults);
          }
          var fact = new VialReceived(vial.orThrow());
          Reading<Long> kept =
              corrects.isPresent()
                  ? changes.appendWithReason(id, fact, actor, now, corrects, reason)
                  : Reading.of(changes.append(id, fact, actor, now));
          return kept.found()
              .<Reading<Long>>map(number -> new Reading.Read<>(number, notices(file, fact.vial())))
              .orElse(kept);
        });
  }

  private static boolean isMissing(CourseFile file, EntryId entry) {
    return file.ownVials().stream().noneMatch(written -> written.entry().id().equals(entry));
  }

  private List<String> notices(CourseFile file, Vial vial) {
    String ordered = reader.preparationOf(file).composition();
    return vial.composition().equals(ordered)
        ? List.of()
        : List.of(
            "The label says "
                + vial.composition()
                + ", the order "
                + ordered
                + ": this vial is not to be used.");
  }
}
