package rungwise.store;

import java.nio.file.Path;
import java.util.function.Function;
import javax.crypto.SecretKey;
import rungwise.clinic.Transactions;
import rungwise.clinic.access.TakenAccesses;
import rungwise.clinic.audit.Audit;
import rungwise.clinic.audit.Trail;
import rungwise.clinic.callbook.CallBook;
import rungwise.clinic.clock.ClockEntries;
import rungwise.clinic.course.Courses;
import rungwise.clinic.factor.Factors;
import rungwise.clinic.formulary.Preparations;
import rungwise.clinic.formulary.Syringes;
import rungwise.clinic.handout.SignedWords;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.people.Accounts;
import rungwise.clinic.people.Credentials;
import rungwise.clinic.populations.PopulationShelf;
import rungwise.clinic.protocols.ProtocolShelf;
import rungwise.clinic.record.Records;
import rungwise.clinic.room.RoomDays;
import rungwise.clinic.supply.ClinicVialShelf;
import rungwise.store.access.SqlTakenAccesses;
import rungwise.store.audit.SqlAudit;
import rungwise.store.audit.SqlClockEntries;
import rungwise.store.audit.SqlSignedWords;
import rungwise.store.audit.SqlTrail;
import rungwise.store.callbook.SqlCallBook;
import rungwise.store.course.SqlClinicVials;
import rungwise.store.course.SqlCourses;
import rungwise.store.database.DataFolder;
import rungwise.store.database.Database;
import rungwise.store.day.RowCheck;
import rungwise.store.day.SqlDayRows;
import rungwise.store.factor.SqlFactors;
import rungwise.store.formulary.SqlPreparations;
import rungwise.store.formulary.SqlSyringes;
import rungwise.store.journal.CarriedEntries;
import rungwise.store.journal.EndFile;
import rungwise.store.journal.Journal;
import rungwise.store.journal.JournalKey;
import rungwise.store.past.SqlPastHistories;
import rungwise.store.people.SqlAccounts;
import rungwise.store.people.SqlCredentials;
import rungwise.store.populations.SqlPopulationShelf;
import rungwise.store.protocols.SqlProtocolShelf;
import rungwise.store.room.SqlRoomDays;

/** All data of one clinic in one folder, opened by one process at a time. */
public final class SqliteStore implements AutoCloseable {

  private final Runnable giveBack;
  private final Database database;
  private final Journal journal;
  private final RecordWatch watch;
  private final Accounts accounts;
  private final Credentials credentials;
  private final Preparations preparations;
  private final Syringes syringes;
  private final Courses courses;
  private final ProtocolShelf protocolShelf;
  private final PopulationShelf populationShelf;
  private final RoomDays roomDays;
  private final ClinicVialShelf clinicVials;
  private final Audit audit;
  private final Records records;
  private final PastHistories pastHistories;
  private final Trail trail;
  private final Factors factors;
  private final TakenAccesses takenAccesses;
  private final SecretKey deviceKey;
  private final SqlDayRows dayRows;

  private SqliteStore(Runnable giveBack, Database database, JournalKey key) {
    this.giveBack = giveBack;
    this.database = database;
    this.journal = new Journal(database, key);
    this.watch = new RecordWatch(database, journal);
    this.accounts = new SqlAccounts(database, journal);
    this.credentials = new SqlCredentials(database);
    this.preparations = new SqlPreparations(database, journal);
    this.syringes = new SqlSyringes(database, journal);
    this.courses = new SqlCourses(database, journal, watch::flaws);
    this.protocolShelf = new SqlProtocolShelf(database, journal);
    this.populationShelf = new SqlPopulationShelf(database, journal);
    this.roomDays = new SqlRoomDays(database, journal);
    this.clinicVials = new SqlClinicVials(database, journal);
    this.audit = new SqlAudit(database, journal);
    this.pastHistories = new SqlPastHistories(database, journal);
    this.records = new SqlRecords(this, new CarriedEntries(database, journal));
    this.trail = new SqlTrail(database);
    this.factors = new SqlFactors(database, journal, key);
    this.takenAccesses = new SqlTakenAccesses(database, journal);
    this.deviceKey = key.derived("known devices");
    this.dayRows =
        new SqlDayRows(
            database, courses, new RowCheck(key.derived("rows of the day's list")), watch::flaws);
  }

  /**
   * Opens a data folder, which must exist; an empty one becomes a new store.
   *
   * @throws rungwise.store.database.CannotOpenStore if it cannot be opened; the message says why
   *     and what to do
   */
  public static SqliteStore open(Path dataFolder) {
    return open(dataFolder, Database.READERS);
  }

  /** The same with another number of connections that read. */
  static SqliteStore open(Path dataFolder, int readers) {
    return open(dataFolder, folder -> Database.open(folder, readers));
  }

  /**
   * The same where it is known that the tables are those of this program; one connection reads.
   *
   * @throws rungwise.store.database.CannotOpenStore if it cannot be opened
   */
  public static SqliteStore openKnown(Path dataFolder) {
    return open(dataFolder, folder -> Database.openKnown(folder, 1));
  }

  private static SqliteStore open(Path dataFolder, Function<DataFolder, Database> opening) {
    DataFolder folder = DataFolder.take(dataFolder);
    try {
      JournalKey key = JournalKey.in(folder, /* isNewFolder= */ !Database.isIn(folder));
      var store = new SqliteStore(folder::close, opening.apply(folder), key);
      store.journal.sealEnds();
      store.journal.keepEnd(EndFile.in(dataFolder, key));
      return store;
    } catch (RuntimeException e) {
      folder.close();
      throw e;
    }
  }

  /**
   * Opens a data folder for reading only, also while another process uses it.
   *
   * @throws rungwise.store.database.CannotOpenStore if it cannot be opened
   */
  public static SqliteStore openToRead(Path dataFolder) {
    DataFolder.requireExists(dataFolder);
    JournalKey key = JournalKey.keptIn(dataFolder);
    return new SqliteStore(() -> {}, Database.openToRead(dataFolder), key);
  }

  /** The key by which devices are known again, also after a restart; it is not in the database. */
  public SecretKey deviceKey() {
    return deviceKey;
  }

  public Transactions transactions() {
    return database;
  }

  public Accounts accounts() {
    return accounts;
  }

  public Credentials credentials() {
    return credentials;
  }

  public Preparations preparations() {
    return preparations;
  }

  public Syringes syringes() {
    return syringes;
  }

  public Courses courses() {
    return courses;
  }

  public ProtocolShelf protocolShelf() {
    return protocolShelf;
  }

  public PopulationShelf populationShelf() {
    return populationShelf;
  }

  public RoomDays roomDays() {
    return roomDays;
  }

  public ClinicVialShelf clinicVials() {
    return clinicVials;
  }

  /** What the clinic keeps for calls. */
  public CallBook callBook() {
    return new SqlCallBook(database, journal);
  }

  public SignedWords signedWords() {
    return new SqlSignedWords(database, journal);
  }

  public ClockEntries clockEntries() {
    return new SqlClockEntries(database, journal);
  }

  public Audit audit() {
    return audit;
  }

  public PastHistories pastHistories() {
    return pastHistories;
  }

  public Records records() {
    return records;
  }

  public Trail trail() {
    return trail;
  }

  public Factors factors() {
    return factors;
  }

  public SqlDayRows dayRows() {
    return dayRows;
  }

  public TakenAccesses takenAccesses() {
    return takenAccesses;
  }

  /** Looks at what every course rests on, when it is asked to. */
  public RecordWatch watch() {
    return watch;
  }

  public Journal journal() {
    return journal;
  }

  /** Waits for work under way and gives the folder back. */
  @Override
  public void close() {
    database.close();
    giveBack.run();
  }
}
