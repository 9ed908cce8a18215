package rungwise.app.server;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;
import javax.crypto.SecretKey;
import rungwise.app.fit.ThreadWorkers;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.audit.Trail;
import rungwise.clinic.audit.Viewing;
import rungwise.clinic.call.Calls;
import rungwise.clinic.call.Rescues;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.clock.ClockCheck;
import rungwise.clinic.clock.ClockConfirming;
import rungwise.clinic.clock.ClockWatch;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Patient;
import rungwise.clinic.factor.FactorPorts;
import rungwise.clinic.factor.FactorSecret;
import rungwise.clinic.factor.PasskeyUse;
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.fitting.FitPorts;
import rungwise.clinic.fitting.FitRuns;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.formulary.FormularyPorts;
import rungwise.clinic.handout.Sheets;
import rungwise.clinic.joining.Joining;
import rungwise.clinic.past.CourseAsHistory;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastImports;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.OneTimeCode;
import rungwise.clinic.people.PasswordHashing;
import rungwise.clinic.people.People;
import rungwise.clinic.people.PeoplePorts;
import rungwise.clinic.populations.PopulationPorts;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.reaching.Reaching;
import rungwise.clinic.record.Carrying;
import rungwise.clinic.room.Room;
import rungwise.clinic.running.Running;
import rungwise.clinic.screening.Screenings;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.Acknowledging;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.start.Correcting;
import rungwise.clinic.start.Starting;
import rungwise.clinic.supply.ClinicVials;
import rungwise.clinic.supply.Vials;
import rungwise.clinic.takeover.TakingOver;
import rungwise.clinic.teaching.Teaching;
import rungwise.clinic.titration.Lifting;
import rungwise.clinic.titration.Replay;
import rungwise.clinic.titration.Titration;
import rungwise.clinic.today.DayList;
import rungwise.clinic.today.Touched;
import rungwise.files.FitDocument;
import rungwise.files.PopulationDocuments;
import rungwise.files.SampleProtocolReader;
import rungwise.sheets.PdfPress;
import rungwise.store.RecordWatch;
import rungwise.store.SqliteStore;
import rungwise.web.secrets.Argon2Hashing;
import rungwise.web.secrets.GuessedPasswords;

/** A clinic's data folder, opened, with the use cases on top of it. */
public final class OpenClinic implements AutoCloseable {

  private final SqliteStore store;
  private final PasswordHashing hashing;
  private final InstantSource clock;
  private final People people;
  private final Formulary formulary;
  private final Populations populations;
  private final Protocols protocols;

  private OpenClinic(SqliteStore store, InstantSource clock, PasswordHashing hashing) {
    this.store = store;
    this.hashing = hashing;
    this.clock = clock;
    this.people = new People(peoplePorts());
    this.formulary =
        new Formulary(
            new FormularyPorts(
                store.accounts(),
                store.preparations(),
                store.syringes(),
                UUID::randomUUID,
                clock,
                store.transactions()));
    this.populations =
        new Populations(
            new PopulationPorts(
                store.populationShelf(),
                new PopulationDocuments(),
                formulary::find,
                () -> formulary.list().stream().map(ClinicPreparation::preparation).toList(),
                store.transactions(),
                clock));
    this.protocols =
        new Protocols(
            store.protocolShelf(),
            new SampleProtocolReader(),
            store.transactions(),
            clock,
            populations::canKeepLimitsOf);
  }

  /**
   * Opens a data folder, which must exist; an empty one becomes a new clinic.
   *
   * @throws rungwise.store.database.CannotOpenStore if it cannot be opened
   */
  public static OpenClinic in(Path folder, InstantSource clock) {
    return in(folder, clock, new Argon2Hashing());
  }

  /** The same with another way to hash passwords and codes, for clinics that nobody breaks into. */
  public static OpenClinic in(Path folder, InstantSource clock, PasswordHashing hashing) {
    return new OpenClinic(SqliteStore.open(folder), clock, hashing);
  }

  /**
   * Opens a data folder for reading only, also while another process uses it.
   *
   * @throws rungwise.store.database.CannotOpenStore if it cannot be opened
   */
  public static OpenClinic toRead(Path folder, InstantSource clock) {
    return new OpenClinic(SqliteStore.openToRead(folder), clock, new Argon2Hashing());
  }

  private static OneTimeCode newCode() {
    return OneTimeCode.of(random(OneTimeCode.BYTES));
  }

  private static FactorSecret newSecret() {
    return FactorSecret.of(random(FactorSecret.BYTES));
  }

  private static byte[] random(int bytes) {
    var random = new byte[bytes];
    new SecureRandom().nextBytes(random);
    return random;
  }

  private PeoplePorts peoplePorts() {
    return new PeoplePorts(
        store.accounts(),
        store.credentials(),
        hashing,
        new GuessedPasswords(),
        OpenClinic::newCode,
        UUID::randomUUID,
        clock,
        store.transactions());
  }

  private FactorPorts factorPorts() {
    return new FactorPorts(
        store.factors(),
        store.accounts(),
        hashing,
        OpenClinic::newCode,
        OpenClinic::newSecret,
        clock,
        store.transactions());
  }

  public SecondFactors secondFactors() {
    return new SecondFactors(factorPorts());
  }

  public PasskeyUse passkeyUse() {
    return new PasskeyUse(factorPorts());
  }

  public CourseAccess courseAccess() {
    return new CourseAccess(store.takenAccesses(), store.courses(), store.transactions(), clock);
  }

  /** The key by which devices that have signed in are known again. */
  SecretKey deviceKey() {
    return store.deviceKey();
  }

  /**
   * Writes down that a record that ends before what had been saved is meant, and why.
   *
   * @throws WrongUse if it does not end too early, or no reason is given
   */
  public void acceptShorterRecord(String why) {
    if (why.isBlank() || why.length() > NewEntry.LONGEST_WORDS) {
      throw new WrongUse(
          "--accept-shorter-record has "
              + why.length()
              + " characters: write in 1 to "
              + NewEntry.LONGEST_WORDS
              + " why the record was put back.");
    }
    if (store.journal().flawOfEnd().isEmpty()) {
      throw new WrongUse(
          "--accept-shorter-record is for a record that ends before what had been saved, and this"
              + " one does not: start without it.");
    }
    store.journal().acceptEnd(clock.instant(), AccountId.PROGRAM.text(), why.strip());
  }

  /** Looks at what every course rests on. */
  RecordWatch watch() {
    return store.watch();
  }

  public Trail trail() {
    return store.trail();
  }

  public People people() {
    return people;
  }

  public Formulary formulary() {
    return formulary;
  }

  public Protocols protocols() {
    return protocols;
  }

  public Populations populations() {
    return populations;
  }

  /** Fits to the clinic's own courses, one at a time, beside what pages do. */
  FitRuns fitRuns(Titration titration, ClinicTime time) {
    return new FitRuns(
        new FitPorts(
            () -> titration.all().stream().filter(state -> state.file().isSound()).toList(),
            store.pastHistories(),
            populations,
            formulary::find,
            () -> formulary.list().stream().map(ClinicPreparation::preparation).toList(),
            result -> FitDocument.of(result).toString(),
            ThreadWorkers::ofSpareProcessors,
            run -> Thread.ofPlatform().daemon().name("fit").start(run),
            time));
  }

  /** Carries the record to another store, or from one. */
  public Carrying carrying() {
    return new Carrying(store.records(), store.transactions());
  }

  /** Brings in histories from before the record. */
  public PastImports pastImports() {
    return new PastImports(
        store.pastHistories(),
        id -> formulary.find(id).isPresent(),
        store.transactions(),
        UUID::randomUUID,
        clock);
  }

  /** The courses of a record number, in one form for all its spellings. */
  public List<CourseFile> coursesOf(String recordNumber) {
    return courses().filter(file -> isOf(file, recordNumber)).toList();
  }

  private static boolean isOf(CourseFile file, String recordNumber) {
    return file.patient().recordKey().equals(Patient.keyOf(recordNumber));
  }

  /** Every course's injections, and what was brought in for them, as histories. */
  public List<PastHistory> histories(Predicate<CourseFile> of) {
    return courses()
        .filter(of)
        .sorted(Comparator.comparingLong(file -> file.entries().getFirst().number()))
        .flatMap(
            file ->
                CourseAsHistory.of(
                    file,
                    store.pastHistories().of(file.patient().recordKey()),
                    id -> formulary.find(id).orElseThrow()))
        .toList();
  }

  /** Every course, read anew. */
  public Stream<CourseFile> courses() {
    return store.courses().all().stream().flatMap(id -> store.courses().find(id).stream());
  }

  public Viewing viewing() {
    return new Viewing(store.audit(), store.courses(), store.transactions(), clock);
  }

  /** Begins to compare the clock with whatever can be had. */
  ClockWatch clockWatch() {
    return new ClockWatch(clock, System::nanoTime, store.clockEntries().newest());
  }

  /** Keeps with each entry from now on what is then believed of the clock. */
  void keepClock(ClockCheck check) {
    store.journal().keepClock(() -> Optional.of(check.belief().token()));
  }

  ClockConfirming clockConfirming(ClockWatch watch, ClinicTime time) {
    return new ClockConfirming(watch, store.clockEntries(), store.transactions(), clock, time);
  }

  CallBooks callBooks() {
    return new CallBooks(store.callBook(), store.transactions(), clock);
  }

  private Touched touched() {
    return new Touched(store.courses(), store.transactions());
  }

  private StandingPorts standing(ClinicTime time, ClockCheck check, Touched touched) {
    return new StandingPorts(
        touched.courses(),
        store.pastHistories(),
        protocols,
        populations,
        formulary::find,
        formulary::labelled,
        id -> formulary.version(id).orElseThrow().inUse(),
        formulary::recalledAt,
        touched.transactions(),
        clock,
        check,
        time);
  }

  /** The use cases about courses by a clock that is given, on the clinic's wall clock. */
  CourseCases courseCases(ClinicTime time) {
    return courseCases(time, ClockCheck.GIVEN);
  }

  /** The use cases about courses, on the clinic's wall clock. */
  CourseCases courseCases(ClinicTime time, ClockCheck check) {
    Touched touched = touched();
    StandingPorts ports = standing(time, check, touched);
    return new CourseCases(
        new Starting(ports, formulary::isInUse, UUID::randomUUID),
        new Screenings(ports),
        new Vials(ports),
        new ClinicVials(ports, store.clinicVials()),
        new Room(ports, store.roomDays(), store.clinicVials(), store.accounts()::all),
        new Teaching(ports),
        new Titration(ports),
        new Lifting(ports),
        new Calls(ports, store.accounts()::all),
        new Rescues(ports, callBooks()::signed),
        new Reaching(ports),
        new Running(ports),
        new TakingOver(ports),
        new Joining(ports),
        new Correcting(ports),
        new Acknowledging(ports),
        new Sheets(ports, store.signedWords(), new PdfPress(), UUID::randomUUID),
        new DayList(ports, touched, courseViews(time), store.dayRows()));
  }

  /** Courses in words, with the names of those who wrote. */
  CourseViews courseViews(ClinicTime time) {
    return new CourseViews(
        time, id -> people.find(id).map(Account::fullName).orElse("the program"));
  }

  /** Every signed dose in force, asked again of the record as it was then. */
  public List<Replay> replays(ClinicTime time) {
    Titration titration = new Titration(standing(time, ClockCheck.GIVEN, touched()));
    return courses().flatMap(file -> titration.replays(file).stream()).toList();
  }

  public InstantSource clock() {
    return clock;
  }

  @Override
  public void close() {
    store.close();
  }
}
