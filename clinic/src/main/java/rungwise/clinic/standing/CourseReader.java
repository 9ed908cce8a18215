package rungwise.clinic.standing;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.course.Answers;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.ExaminationRecorded;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.course.Vial;
import rungwise.clinic.past.PastReading;
import rungwise.clinic.protocols.SignedProtocol;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.dosing.choice.Choice;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Reading;

/** Makes the engine's question of a course's record. Reading it twice gives the same question. */
public final class CourseReader {

  private static final long EVERYTHING = Long.MAX_VALUE;

  private final StandingPorts ports;

  public CourseReader(StandingPorts ports) {
    this.ports = ports;
  }

  /** The state of a course at an instant, by the population that is in use now. */
  public CourseState state(CourseFile file, Instant now) {
    return state(file, EVERYTHING, now, this::usual, this::vial, ports.clockCheck().belief());
  }

  private Choice usual(CourseFile file) {
    return ports.populations().choiceFor(file.plan().preparation());
  }

  /**
   * As it was at an instant that stands on record, by another way to choose.
   *
   * @param basis the number of the last entry that is read
   */
  public CourseState asOf(CourseFile file, long basis, Instant then, Choice choice) {
    return state(file.upTo(basis), basis, then, one -> choice, this::vial, ClockBelief.given());
  }

  /** The state while a dose is drawn from a vial of the clinic's, not from his own. */
  public CourseState drawing(CourseFile file, Instant now, EntryId vial, Vial label) {
    return state(
        file,
        EVERYTHING,
        now,
        this::usual,
        (course, protocol, at) -> Optional.of(ofClinic(course, protocol, at, vial, label)),
        ports.clockCheck().belief());
  }

  /** The state while a dose is drawn from one of his own vials, not from the one in use. */
  public CourseState drawing(CourseFile file, Instant now, Optional<Written<VialReceived>> vial) {
    return state(
        file,
        EVERYTHING,
        now,
        this::usual,
        (course, protocol, at) -> vial.map(one -> own(course, protocol, at, one)),
        ports.clockCheck().belief());
  }

  /** Finds the vial in hand. */
  @FunctionalInterface
  private interface InHand {
    Optional<VialInHand> of(CourseFile file, Protocol protocol, Instant now);
  }

  /**
   * Of what is not as it was written any failure may come.
   *
   * @throws UnreadableRecord if what is left of the record makes no course
   */
  private CourseState state(
      CourseFile file,
      long limit,
      Instant now,
      Function<CourseFile, Choice> choice,
      InHand inHand,
      ClockBelief clock) {
    try {
      return read(file, limit, now, choice.apply(file), inHand, clock);
    } catch (RuntimeException e) {
      throw file.isSound() ? e : new UnreadableRecord(file.id().text(), e);
    }
  }

  private CourseState read(
      CourseFile file, long limit, Instant now, Choice choice, InHand inHand, ClockBelief clock) {
    Plan plan = file.plan();
    Protocol protocol = protocol(plan);
    ByDay byDay = byDay(file, protocol, now, ports.time().dayOf(now));
    History history = history(file, protocol, now, limit);
    LadderProposal proposal =
        file.signedDose()
            .map(written -> new LadderProposal(ladder(written.fact(), plan), List.of()))
            .orElseGet(() -> shown(plan, file, history));
    Answers answers = new HistoryReading(ports).answers(file, limit);
    var question =
        new Question(
            file.opened().group(),
            answers.counting(),
            byDay.readiness(),
            protocol,
            proposal.ladder(),
            history,
            inHand.of(file, protocol, now),
            circumstances(file, answers, limit, byDay, now, clock),
            now);
    List<ReportFlag> flags =
        new KeptFlags(
                at -> flags(at, at.equals(file) ? history : history(at, protocol, now, limit)),
                ports.time())
            .of(file);
    return new CourseState(
        file,
        answers,
        question,
        choice,
        proposal.notes(),
        PastReading.unconfirmed(file, ports.past()),
        flags,
        signed(plan).waits(),
        clock);
  }

  private List<ReportFlag> flags(CourseFile file, History history) {
    return new ReportFlags(
            file,
            history.injections(),
            new Remembered<Plan, Protocol>(this::protocol),
            new Remembered<PreparationId, Preparation>(this::preparation),
            ports.time())
        .read();
  }

  /**
   * The ladder of a course without an order. A protocol that is no more for its preparation still
   * shows what it would give, and a plan of which a late report has left no first dose shows its
   * steps with the reasons; guards stop every dose of them.
   */
  private LadderProposal shown(Plan plan, CourseFile file, History history) {
    Preparation preparation = preparation(plan.preparation());
    Protocol signed = protocol(plan);
    Protocol protocol = signed.isFor(preparation) ? signed : signed.asWrittenFor(preparation);
    Reading<LadderProposal> proposed = propose(protocol, plan, file, history);
    return proposed
        .found()
        .orElseGet(
            () ->
                new LadderProposal(
                    LadderProposal.whateverHeTolerated(
                            protocol,
                            preparation,
                            Barrels.of(plan.barrel()).orElseThrow(),
                            file.opened().group())
                        .orThrow()
                        .ladder(),
                    proposed.faults()));
  }

  /**
   * What is counted by whole days of the clinic's.
   *
   * @param readiness what counts for home use
   * @param expired what of it was on record and has run out
   * @param newer later versions of the protocol, in so far as their limits hold
   */
  public record ByDay(Set<Readiness> readiness, Set<Readiness> expired, List<Protocol> newer) {
    public ByDay {
      readiness = Set.copyOf(readiness);
      expired = Set.copyOf(expired);
      newer = List.copyOf(newer);
    }
  }

  /** What would be counted on a day if it were that day at an instant. */
  public ByDay byDay(CourseFile file, Instant now, LocalDate day) {
    return byDay(file, protocolOf(file), now, day);
  }

  private ByDay byDay(CourseFile file, Protocol protocol, Instant now, LocalDate day) {
    return new ByDay(
        file.readiness(protocol.home(), day),
        file.expired(protocol.home(), day),
        ports.protocols().newerThan(protocol, now, day));
  }

  private Circumstances circumstances(
      CourseFile file, Answers answers, long limit, ByDay byDay, Instant now, ClockBelief clock) {
    List<CourseFile> all = new HistoryReading(ports).all(file, limit);
    // A recall that a clock has dated too late counts at once; a replay asks as of then.
    boolean isOfThen = now.isBefore(ports.clock().instant().minus(Duration.ofMinutes(1)));
    Optional<Instant> recall = ports.recalled().apply(file.plan().preparation());
    boolean isRecalled = recall.filter(at -> !isOfThen || !at.isAfter(now)).isPresent();
    return new Circumstances(
        Optional.of(file.entries().getFirst().recordedAt()),
        examined(file),
        answers.lastFound(),
        isRecalled,
        byDay.newer(),
        all.stream()
            .flatMap(one -> new Tablets(one).last().stream())
            .max(Comparator.comparing(Circumstances.LastTablet::at)),
        all.stream().flatMap(one -> UnfinishedReports.worries(one).stream()).toList(),
        byDay.expired(),
        all.stream().flatMap(one -> one.flaws().stream()).map(Flaw::words).distinct().toList(),
        clock.doubt(),
        LifeLog.of(file).halt());
  }

  /** The ladder that a plan would give this man, or why it gives none. */
  public Reading<LadderProposal> ladderOf(Plan plan, CourseFile file) {
    Protocol protocol = protocol(plan);
    return propose(
        protocol, plan, file, history(file, protocol, ports.clock().instant(), EVERYTHING));
  }

  /**
   * When he was last examined, as far as that is known: of a day without a time it may have been at
   * its very beginning.
   */
  private Optional<Instant> examined(CourseFile file) {
    return file.inForce(ExaminationRecorded.class).stream()
        .map(Written::fact)
        .filter(fact -> fact.scarring() != Answer.NOT_KNOWN)
        .map(fact -> fact.at().orElseGet(() -> ports.time().startOf(fact.day())))
        .max(Comparator.naturalOrder());
  }

  private History history(CourseFile file, Protocol protocol, Instant now, long limit) {
    return new HistoryReading(ports).of(file, protocol, now, limit);
  }

  private Stocks stocks(
      CourseFile file, Protocol protocol, Function<PreparationId, Preparation> known) {
    return new Stocks(file, protocol, ports.time().zone(), known);
  }

  /**
   * The ladder for this man's group. Where he begins a preparation whose first dose holds as much
   * as one that lasted two hours, it begins at the lowest start that the protocol has for anybody.
   */
  private Reading<LadderProposal> propose(
      Protocol protocol, Plan plan, CourseFile file, History history) {
    Preparation preparation = preparation(plan.preparation());
    Reading<LadderProposal> usual = ladderFor(protocol, plan, file.opened().group(), history);
    boolean isTooMuch =
        history.lastOf(preparation).isEmpty()
            && usual
                .found()
                .flatMap(one -> history.closing(preparation, one.ladder().first()))
                .isPresent();
    if (!isTooMuch) {
      return usual;
    }
    var lowest = ladderFor(protocol, plan, protocol.groupWithLowestStart(), history);
    return lowest.found().isPresent() ? lowest : usual;
  }

  private Reading<LadderProposal> ladderFor(
      Protocol protocol, Plan plan, AetiologyGroup group, History history) {
    return LadderProposal.of(
        protocol,
        preparation(plan.preparation()),
        Barrels.of(plan.barrel()).orElseThrow(),
        group,
        history.beginning(preparation(plan.preparation())));
  }

  /** The ladder that a plan would give a man without a record, or why it gives none. */
  public Reading<LadderProposal> ladderOf(Plan plan, AetiologyGroup group) {
    Barrel barrel = Barrels.of(plan.barrel()).orElseThrow();
    return LadderProposal.of(protocol(plan), preparation(plan.preparation()), barrel, group);
  }

  /** The protocol that a course runs on. */
  public Protocol protocolOf(CourseFile file) {
    return protocol(file.plan());
  }

  /** The preparation that a course runs with. */
  public Preparation preparationOf(CourseFile file) {
    return preparation(file.plan().preparation());
  }

  private Optional<VialInHand> vial(CourseFile file, Protocol protocol, Instant now) {
    return file.vial().map(written -> own(file, protocol, now, written));
  }

  private VialInHand own(
      CourseFile file, Protocol protocol, Instant now, Written<VialReceived> vial) {
    VialUse use = uses(file).of(vial);
    return new VialInHand(
        stocks(file, protocol, this::preparation).of(vial, now, preparationOf(file)),
        new VialInHand.Label(vial.fact().vial().composition()),
        use.end(),
        use.life().care());
  }

  private VialInHand ofClinic(
      CourseFile file, Protocol protocol, Instant now, EntryId vial, Vial label) {
    Stocks stocks = stocks(file, protocol, this::preparation);
    EntryId known =
        file.vialOfClinic(vial).map(written -> file.rootOf(written.entry())).orElse(vial);
    return new VialInHand(
        stocks.of(known, label, now, preparationOf(file)),
        new VialInHand.Label(label.composition()),
        uses(file).of(label, Optional.empty()).end());
  }

  /** A vial of which a dose is drawn at an instant: open from then on, if it serves for more. */
  public Vial openedBy(CourseFile file, Vial label, Instant drawn) {
    VialUses uses = uses(file);
    return new Vial(
        label.lot(),
        label.composition(),
        uses.of(label, Optional.of(drawn)).dates(),
        label.device());
  }

  /** Until when each vial of a course may be used, by the entry that says so. */
  public Map<EntryId, VialUse> vialUses(CourseFile file) {
    VialUses uses = uses(file);
    return file.vials().stream()
        .collect(Collectors.toMap(written -> written.entry().id(), uses::of));
  }

  private VialUses uses(CourseFile file) {
    return new VialUses(file, this::preparation, ports.inUse(), ports.time().zone());
  }

  private Ladder ladder(DoseSigned signed, Plan plan) {
    return new Ladder(
        preparation(plan.preparation()),
        Barrels.of(plan.barrel()).orElseThrow(),
        signed.rungs(),
        signed.ceiling());
  }

  private Preparation preparation(PreparationId id) {
    return ports.preparations().apply(id).orElseThrow();
  }

  private Protocol protocol(Plan plan) {
    return signed(plan).protocol();
  }

  private SignedProtocol signed(Plan plan) {
    return ports.protocols().find(plan.protocol(), plan.protocolVersion()).orElseThrow();
  }
}
