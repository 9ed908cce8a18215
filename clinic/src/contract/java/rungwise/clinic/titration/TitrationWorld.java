package rungwise.clinic.titration;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.protocols.ProtocolReader;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.start.CourseDraft;
import rungwise.clinic.start.Starting;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.Protocol;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Concentration;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * A clinic whose clock stands until it is moved, over any store. Its zone is New York, its one
 * protocol the first sample, which is signed.
 */
public final class TitrationWorld {

  public static final Instant START = Instant.parse("2026-03-02T15:00:00.123Z");

  /** So weak that a small syringe does not hold the first dose. */
  public static final Preparation WEAK =
      new Preparation(
          new PreparationId("alprostadil-5"),
          "Alprostadil 5",
          new Form.Solution(),
          List.of(
              new Ingredient(
                  Component.ALPROSTADIL,
                  Concentration.parse("5 mcg/mL").orThrow(),
                  Optional.empty())),
          Volume.ofMicrolitres(1000),
          Optional.empty());

  private final CoursePorts stored;
  private final Protocol protocol;
  private final Titration titration;
  private final Starting starting;
  private final AtomicInteger ids = new AtomicInteger();
  private final Set<PreparationId> withdrawn = new HashSet<>();
  private Instant now = START;

  public TitrationWorld(CoursePorts stored, ProtocolReader reader) {
    this.stored = stored;
    var protocols = new Protocols(stored.shelf(), reader, stored.transactions(), () -> now);
    if (protocols.signed().isEmpty()) {
      Protocol sample = protocols.unsignedSamples().getFirst();
      protocols.signSample(Staff.PRESCRIBER, sample.name(), sample.version()).orThrow();
    }
    this.protocol = protocols.signed().getFirst().protocol();
    var ports =
        new TitrationPorts(
            stored.courses(),
            protocols,
            TitrationWorld::preparation,
            stored.transactions(),
            () -> now,
            new ClinicTime(ZoneId.of("America/New_York")));
    this.titration = new Titration(ports);
    this.starting = new Starting(ports, this::isInUse, () -> new UUID(5, ids.incrementAndGet()));
  }

  private static Optional<Preparation> preparation(PreparationId id) {
    return id.equals(WEAK.id()) ? Optional.of(WEAK) : SamplePreparations.of(id.value());
  }

  private boolean isInUse(PreparationId id) {
    return preparation(id).isPresent() && !withdrawn.contains(id);
  }

  public Titration titration() {
    return titration;
  }

  public Starting starting() {
    return starting;
  }

  public CoursePorts stored() {
    return stored;
  }

  public Instant now() {
    return now;
  }

  /** Takes a preparation out of use; it is still found. */
  public void withdraw(PreparationId id) {
    withdrawn.add(id);
  }

  public void pass(Duration time) {
    now = now.plus(time);
  }

  public void setClock(Instant instant) {
    now = instant;
  }

  /** A form that is right in every field. */
  public CourseDraft form(String name, String number, String group, String barrel) {
    return new CourseDraft(
        name,
        "1961-04-30",
        number,
        group,
        "alprostadil-20",
        barrel,
        protocol.key(),
        "no",
        /* namesakeConfirmed= */ false);
  }

  /** A new course on a 1 mL syringe, for a group that starts at 0.12 mL. */
  public CourseId open() {
    return open("vasculogenic", "u100-1");
  }

  public CourseId open(String group, String barrel) {
    int number = ids.get() + 1;
    return starting
        .open(Staff.EDUCATOR, form("Man " + number, "MR-" + number, group, barrel))
        .orThrow();
  }

  public CourseState state(CourseId id) {
    return titration.find(id).orElseThrow();
  }

  public CourseFile file(CourseId id) {
    return stored.courses().find(id).orElseThrow();
  }

  public EntryId lastEntry(CourseId id) {
    return last(id).id();
  }

  public CourseEntry last(CourseId id) {
    return file(id).entries().getLast();
  }

  public Reading<Long> report(CourseId id, ReportForm form) {
    return titration.report(Staff.EDUCATOR, id, form.draft());
  }

  /** The form by which the proposed dose is signed, for the clinic. */
  public SignDraft proposed(CourseId id) {
    CourseState state = state(id);
    long volume = state.advice().decision().proposed().orElseThrow().microlitres();
    return new SignDraft(volume, Place.CLINIC, state.file().basis(), "", Set.of(), "");
  }

  /** The form by which a volume is signed against the proposal, for the clinic. */
  public SignDraft instead(CourseId id, long microlitres) {
    return new SignDraft(microlitres, Place.CLINIC, file(id).basis(), "MORE_CAUTION", Set.of(), "");
  }

  public SignDraft overriding(CourseId id, String reason, GuardRule... rules) {
    SignDraft draft = proposed(id);
    return new SignDraft(
        draft.volumeMicrolitres(), draft.place(), draft.basis(), "", Set.of(rules), reason);
  }

  public static SignDraft atHome(SignDraft draft) {
    return new SignDraft(
        draft.volumeMicrolitres(),
        Place.HOME,
        draft.basis(),
        draft.changed(),
        draft.overridden(),
        draft.reason());
  }

  /** Signs as the prescriber. */
  public Reading<Long> sign(CourseId id, SignDraft draft) {
    return titration.sign(Staff.PRESCRIBER, id, draft);
  }

  /** Signs the proposed dose. */
  public void signProposed(CourseId id) {
    sign(id, proposed(id)).orThrow();
  }

  /** Everything that home use needs is on record. */
  public void makeReady(CourseId id) {
    for (Readiness item : Readiness.values()) {
      titration.recordReadiness(Staff.EDUCATOR, id, item).orThrow();
    }
  }

  /** What stops him now. */
  public List<GuardRule> blocks(CourseId id) {
    return state(id).mayInject().blocks().stream().map(verdict -> verdict.rule()).toList();
  }
}
