package rungwise.checks.adversary;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import rungwise.clinic.Transactions;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Vial;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.populations.PopulationShelf;
import rungwise.clinic.protocols.ProtocolShelf;
import rungwise.clinic.room.RoomDays;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.supply.ClinicVial;
import rungwise.clinic.supply.ClinicVialShelf;

/** The record of one man in memory. Whatever a use case appends before it throws is a bug here. */
final class Memory implements Courses, Transactions {

  private final List<CourseEntry> entries = new ArrayList<>();
  private final List<PastHistories.Kept> past = new ArrayList<>();
  private final List<ProtocolShelf.Signed> protocols = new ArrayList<>();
  private Optional<CourseId> course = Optional.empty();
  private Optional<CourseFile> file = Optional.empty();
  private final List<PastHistories.Undone> undone = new ArrayList<>();
  private boolean isSound = true;
  private long number;

  /** Another man comes; the clinic's protocols stay. */
  void begin() {
    entries.clear();
    past.clear();
    undone.clear();
    isSound = true;
    course = Optional.empty();
    file = Optional.empty();
    number = 0;
  }

  long lastNumber() {
    return number;
  }

  CourseEntry lastEntry() {
    return entries.getLast();
  }

  @Override
  public <T> T inTransaction(Supplier<T> work) {
    return work.get();
  }

  @Override
  public List<CourseId> all() {
    return course.stream().toList();
  }

  @Override
  public List<CourseId> underObservation() {
    return all();
  }

  @Override
  public List<CourseId> leftWhileFirm() {
    return all();
  }

  @Override
  public Optional<CourseFile> find(CourseId id) {
    if (file.isEmpty() && course.isPresent()) {
      List<Flaw> flaws = isSound ? List.of() : List.of(new Flaw(Flaw.What.CHANGED, 1));
      file = Optional.of(new CourseFile(id, entries, flaws));
    }
    return file;
  }

  @Override
  public List<CourseId> alike(Patient patient) {
    return List.of();
  }

  @Override
  public long append(NewEntry entry) {
    course = Optional.of(entry.course());
    number++;
    entries.add(
        new CourseEntry(
            number,
            new EntryId(new UUID(7, number).toString()),
            entry.at(),
            entry.by(),
            entry.corrects(),
            entry.reason(),
            entry.fact()));
    file = Optional.empty();
    return number;
  }

  boolean isSound() {
    return isSound;
  }

  /** Whether every entry is as it was written. */
  void setSound(boolean sound) {
    isSound = sound;
    file = Optional.empty();
  }

  /** Takes back what was brought in, and gives the numbers of what is not there any more. */
  List<Long> undoPast(Instant at) {
    List<Long> gone = past.stream().map(PastHistories.Kept::number).toList();
    for (PastHistories.Kept one : past) {
      number++;
      var entry = new EntryId(new UUID(8, number).toString());
      undone.add(new PastHistories.Undone(one, entry, number, at, "of another man"));
    }
    past.clear();
    return gone;
  }

  /** Keeps a protocol for every man who comes. */
  void keep(String name, int version, String document, AccountId by) {
    protocols.add(new ProtocolShelf.Signed(name, version, document, List.of(), by, Instant.EPOCH));
  }

  /** Keeps a history from before, as an import does. */
  long keep(PastHistory history, Instant at) {
    number++;
    past.add(new PastHistories.Kept(number, at, "import", history));
    return number;
  }

  /** The histories from before. */
  final class Past implements PastHistories {
    @Override
    public List<PastHistories.Kept> of(String recordKey) {
      return past;
    }

    @Override
    public List<PastHistories.Undone> undone(String recordKey) {
      return undone;
    }

    @Override
    public List<PastHistories.Kept> all() {
      return past;
    }

    @Override
    public void append(String importId, String source, PastHistory history, Instant at) {
      keep(history, at);
    }

    @Override
    public int withdraw(String importId, Instant at, String reason) {
      throw new UnsupportedOperationException("no import is withdrawn here");
    }
  }

  /** The clinic's protocols. */
  final class Shelf implements ProtocolShelf {
    @Override
    public List<ProtocolShelf.Signed> all() {
      return protocols;
    }

    @Override
    public Optional<ProtocolShelf.Signed> find(String name, int version) {
      return protocols.stream().filter(one -> one.name().equals(name)).findFirst();
    }

    @Override
    public void append(ProtocolShelf.Signed signed) {
      protocols.add(signed);
    }
  }

  /** No population was ever signed, no day is kept, and the clinic keeps no vial. */
  static final class Nothing implements PopulationShelf, RoomDays, ClinicVialShelf {
    @Override
    public List<PopulationShelf.Kept> all() {
      return List.of();
    }

    @Override
    public void append(PopulationShelf.Signed signed) {
      throw new UnsupportedOperationException("no population is signed here");
    }

    @Override
    public void withdraw(String name, int version, PopulationShelf.Withdrawn withdrawn) {
      throw new UnsupportedOperationException("no population is withdrawn here");
    }

    @Override
    public Optional<LocalDate> lastClosed() {
      return Optional.empty();
    }

    @Override
    public void close(LocalDate day, AccountId by, Instant at) {
      // Each man has days of his own here.
    }

    @Override
    public List<ClinicVial> kept() {
      return List.of();
    }

    @Override
    public void add(Vial vial, AccountId by, Instant at) {
      throw new UnsupportedOperationException("the clinic keeps no vial here");
    }

    @Override
    public void amend(ClinicVial vial, AccountId by, Instant at, String reason) {
      throw new UnsupportedOperationException("the clinic keeps no vial here");
    }

    @Override
    public void finish(EntryId vial, AccountId by, Instant at, String reason) {
      throw new UnsupportedOperationException("the clinic keeps no vial here");
    }
  }
}
