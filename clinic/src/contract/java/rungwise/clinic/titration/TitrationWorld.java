package rungwise.clinic.titration;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.clock.ClockCheck;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.populations.InventedPopulations;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.protocols.ProtocolReader;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.protocols.SignedProtocol;
import rungwise.clinic.room.Room;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.screening.Screenings;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.start.CourseDraft;
import rungwise.clinic.start.Starting;
import rungwise.clinic.supply.ClinicVials;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.supply.Vials;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.clinic.teaching.Teaching;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.supply.InUseRule;
import rungwise.quantities.Reading;

/**
 * A clinic in New York whose clock stands until it is moved. Every sample of a protocol is signed.
 */
public final class TitrationWorld {

  public static final Instant START = Instant.parse("2026-03-02T15:00:00.123Z");

  /** So weak that a small syringe does not hold the first dose. */
  public static final Preparation WEAK = WeakPreparation.alprostadil5();

  private final CoursePorts stored;
  private final Populations populations;
  private final Protocols written;
  private final List<Protocol> protocols;
  private final StandingPorts ports;
  private final Titration titration;
  private final Starting starting;
  private final AtomicInteger ids = new AtomicInteger();
  private final Map<PreparationId, Instant> withdrawn = new HashMap<>();
  private Instant now = START;
  private ClockCheck check = ClockCheck.GIVEN;
  private InUseRule inUse = new InUseRule.DaysAfterOpening(InUseRule.DaysAfterOpening.MOST);

  public TitrationWorld(CoursePorts stored, ProtocolReader reader) {
    this.stored = stored;
    this.populations = InventedPopulations.of(stored, () -> now);
    this.written =
        new Protocols(
            stored.shelf(), reader, stored.transactions(), () -> now, populations::canKeepLimitsOf);
    for (Protocol sample : written.unsignedSamples()) {
      written.signSample(Staff.PRESCRIBER, sample.name(), sample.version()).orThrow();
    }
    this.protocols = written.signed().stream().map(SignedProtocol::protocol).toList();
    this.ports =
        new StandingPorts(
            stored.courses(),
            stored.past(),
            written,
            populations,
            TitrationWorld::preparation,
            VialForm::preparationOf,
            id -> inUse,
            id -> Optional.ofNullable(withdrawn.get(id)),
            stored.transactions(),
            () -> now,
            () -> check.belief(),
            new ClinicTime(ZoneId.of("America/New_York")));
    this.titration = new Titration(ports);
    this.starting = new Starting(ports, this::isInUse, () -> new UUID(5, ids.incrementAndGet()));
  }

  private static Optional<Preparation> preparation(PreparationId id) {
    return id.equals(WEAK.id()) ? Optional.of(WEAK) : SamplePreparations.of(id.value());
  }

  /** Whether a preparation may be planned now. */
  public boolean isInUse(PreparationId id) {
    return preparation(id).isPresent() && !withdrawn.containsKey(id);
  }

  public Populations populations() {
    return populations;
  }

  /** The use cases about protocols. */
  public Protocols written() {
    return written;
  }

  /** What its use cases stand on. */
  public StandingPorts ports() {
    return ports;
  }

  public Titration titration() {
    return titration;
  }

  public Lifting lifting() {
    return new Lifting(ports);
  }

  public Starting starting() {
    return starting;
  }

  public Screenings screenings() {
    return new Screenings(ports);
  }

  public Vials vials() {
    return new Vials(ports);
  }

  public ClinicVials clinicVials() {
    return new ClinicVials(ports, stored.clinicVials());
  }

  public Teaching teaching() {
    return new Teaching(ports);
  }

  public Room room() {
    return new Room(
        ports,
        stored.roomDays(),
        stored.clinicVials(),
        () -> List.of(Staff.PRESCRIBER, Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR));
  }

  public CoursePorts stored() {
    return stored;
  }

  public Instant now() {
    return now;
  }

  /** How long every preparation may be used once opened, from now on. */
  public void openedLasts(InUseRule rule) {
    inUse = rule;
  }

  /** Takes a preparation out of use; it is still found. */
  public void withdraw(PreparationId id) {
    withdrawn.put(id, now);
  }

  public void pass(Duration time) {
    now = now.plus(time);
  }

  /** Counts the courses from there, so that none of an earlier world is opened again. */
  public void countFrom(int number) {
    ids.set(number);
  }

  /** What is believed of the clock from now on; it is right unless somebody else judges. */
  public void judgeClockBy(ClockCheck other) {
    check = other;
  }

  public void setClock(Instant instant) {
    now = instant;
  }

  /** A form that is right in every field. */
  public CourseDraft form(String name, String number, String group, String barrel) {
    return form(name, number, group, barrel, "alprostadil-20", protocols.getFirst().key());
  }

  private static CourseDraft form(
      String name, String number, String group, String barrel, String preparation, String by) {
    return new CourseDraft(
        name, "1961-04-30", number, group, preparation, barrel, by, /* namesakeConfirmed= */ false);
  }

  /**
   * A new course on a 1 mL syringe, for a group that starts at 0.12 mL. He has none of the
   * conditions, and a vial that lasts.
   */
  public CourseId open() {
    return open("vasculogenic", "u100-1");
  }

  public CourseId open(String group, String barrel) {
    CourseId id = openUnprepared(group, barrel);
    prepare(id, SamplePreparations.ALPROSTADIL_20);
    return id;
  }

  /** A new course of a man whom nobody has screened, without a vial. */
  public CourseId openUnprepared(String group, String barrel) {
    int number = ids.get() + 1;
    return starting
        .open(Staff.EDUCATOR, form("Man " + number, "MR-" + number, group, barrel))
        .orThrow();
  }

  /** A new course with another preparation, screened and with a vial. */
  public CourseId openWith(Preparation preparation, String barrel) {
    CourseId id = openUnprepared(preparation, barrel);
    prepare(id, preparation);
    return id;
  }

  /** The same of a man whom nobody has screened, without a vial. */
  public CourseId openUnprepared(Preparation preparation, String barrel) {
    int number = ids.get() + 1;
    CourseDraft draft =
        form(
            "Man " + number,
            "MR-" + number,
            "vasculogenic",
            barrel,
            preparation.id().value(),
            protocolFor(preparation).key());
    return starting.open(Staff.EDUCATOR, draft).orThrow();
  }

  /** The first signed protocol that is written for a preparation. */
  public Protocol protocolFor(Preparation preparation) {
    return protocols.stream().filter(one -> one.isFor(preparation)).findFirst().orElseThrow();
  }

  /** He has none of the conditions, and a vial that lasts. */
  public void prepare(CourseId id, Preparation preparation) {
    screenings().answer(Staff.EDUCATOR, id, ScreeningForm.all(Answer.NO)).orThrow();
    receive(id, VialForm.of(preparation));
  }

  /** Writes down an answer to one question. */
  public void answer(CourseId id, Condition condition, Answer answer) {
    screenings().answer(Staff.EDUCATOR, id, ScreeningForm.one(condition, answer)).orThrow();
  }

  /** A prescriber writes that a test shows that a yes was wrong. */
  public void overturn(CourseId id, Condition condition) {
    screenings()
        .overturn(Staff.PRESCRIBER, id, condition.name(), "TEST", "the test is negative")
        .orThrow();
  }

  /** Writes down a vial and gives back its entry. */
  public EntryId receive(CourseId id, VialForm form) {
    vials().receive(Staff.EDUCATOR, id, form.draft()).orThrow();
    return lastEntry(id);
  }

  /** Chooses another plan of the same protocol and preparation. */
  public Reading<Long> chooseBarrel(CourseId id, String barrel) {
    Plan plan = file(id).plan();
    return choose(
        id, new Plan(plan.preparation(), barrel, plan.protocol(), plan.protocolVersion()));
  }

  /** Chooses another preparation with its protocol. */
  public Reading<Long> choosePreparation(CourseId id, Preparation preparation) {
    Protocol protocol = protocolFor(preparation);
    String barrel = file(id).plan().barrel();
    return choose(id, new Plan(preparation.id(), barrel, protocol.name(), protocol.version()));
  }

  private Reading<Long> choose(CourseId id, Plan plan) {
    return titration.choosePlan(Staff.PRESCRIBER, id, plan, this::isInUse, "considered");
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

  /** The entry of the report that was written last. */
  public EntryId lastReport(CourseId id) {
    return file(id).reports().getLast().entry().id();
  }

  public CourseEntry last(CourseId id) {
    return file(id).entries().getLast();
  }

  /**
   * A report. Where a dose is signed for the clinic and the form says no place, the injection was
   * seen there until he was soft again; else it is told by telephone.
   */
  public Reading<Long> report(CourseId id, ReportForm said) {
    Optional<CourseFile> file = stored.courses().find(id);
    ReportForm form = said.from(file);
    boolean isSeen =
        form.draft().corrects().isEmpty()
            && !form.draft().typed().containsKey(ReportPart.PLACE)
            && file.flatMap(CourseFile::signedDose)
                .filter(signed -> signed.fact().place() == Place.CLINIC)
                .isPresent();
    return isSeen ? seen(file.orElseThrow(), form) : told(id, form);
  }

  /** A report by telephone. */
  public Reading<Long> told(CourseId id, ReportForm form) {
    return titration.report(Staff.EDUCATOR, id, form.draft());
  }

  private Reading<Long> seen(CourseFile file, ReportForm form) {
    var read = new ReportReading(form.draft(), file, ports, now).read();
    return read.report().isEmpty()
        ? told(file.id(), form)
        : new Reading.Read<>(
            SeenInjection.append(stored, file.id(), read.report().get(), now), read.notices());
  }

  /** The form by which the proposed dose is signed, for the clinic. */
  public SignDraft proposed(CourseId id) {
    CourseState state = state(id);
    long volume = state.advice().decision().proposed().orElseThrow().microlitres();
    return SignForms.inClinic(volume, state.file().basis(), "");
  }

  /** The form by which a volume is signed against the proposal, for the clinic. */
  public SignDraft instead(CourseId id, long microlitres) {
    return SignForms.inClinic(microlitres, file(id).basis(), "MORE_CAUTION");
  }

  public SignDraft overriding(CourseId id, String reason, GuardRule... rules) {
    SignDraft draft = proposed(id);
    return new SignDraft(
        draft.volumeMicrolitres(),
        draft.place(),
        draft.basis(),
        "",
        Set.of(rules),
        reason,
        /* withNextStep= */ false);
  }

  public Reading<Long> sign(CourseId id, SignDraft draft) {
    return titration.sign(Staff.PRESCRIBER, id, draft);
  }

  public void signProposed(CourseId id) {
    sign(id, proposed(id)).orThrow();
  }

  /** Everything that home use needs is on record. */
  public void makeReady(CourseId id) {
    for (Readiness item : Readiness.values()) {
      teaching().record(Staff.EDUCATOR, id, readiness(item)).orThrow();
    }
  }

  /** The form of a readiness item that was done today. */
  public ReadinessDraft readiness(Readiness item) {
    String today = ports.time().dateText(now);
    return item == Readiness.EMERGENCY_PLAN
        ? new ReadinessDraft(item.name(), today, "North Hospital", "555 0100", "a taxi", "")
        : new ReadinessDraft(item.name(), today, "", "", "", "");
  }

  public List<GuardRule> blocks(CourseId id) {
    return state(id).mayInject().blocks().stream().map(verdict -> verdict.rule()).toList();
  }
}
