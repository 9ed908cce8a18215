package rungwise.clinic.course;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import rungwise.clinic.Transactions;
import rungwise.clinic.audit.Audit;
import rungwise.clinic.audit.Look;
import rungwise.clinic.audit.Viewed;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.handout.SignedWords;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.populations.PopulationShelf;
import rungwise.clinic.protocols.ProtocolShelf;
import rungwise.clinic.room.RoomDays;
import rungwise.clinic.supply.ClinicVial;
import rungwise.clinic.supply.ClinicVialShelf;
import rungwise.dosing.history.SoftAfter;

/** Courses, signed protocols and views in memory, with transactions that undo. */
public final class InMemoryRecord implements Transactions {

  private record Stored(CourseId course, CourseEntry entry) {}

  private record StoredView(long number, Viewed viewed) {}

  private final List<Stored> entries = new ArrayList<>();
  private final List<ProtocolShelf.Signed> protocols = new ArrayList<>();
  private final List<PopulationShelf.Kept> populations = new ArrayList<>();
  private final List<StoredView> views = new ArrayList<>();
  private final List<LocalDate> days = new ArrayList<>();
  private final List<ClinicVial> clinicVials = new ArrayList<>();
  private final Map<Integer, SignedWords.Signature> signedWords = new HashMap<>();
  private int vialNumber;
  private int depth;

  /** An empty store. */
  public static CoursePorts ports() {
    return ports(PastHistories.NONE);
  }

  /** An empty store beside histories from before. */
  public static CoursePorts ports(PastHistories past) {
    var memory = new InMemoryRecord();
    return new CoursePorts(
        memory.new InMemoryCourses(),
        memory.new InMemoryShelf(),
        memory.new InMemoryPopulations(),
        memory.new InMemoryAudit(),
        memory.new InMemoryRoomDays(),
        memory.new InMemoryClinicVials(),
        memory.new InMemorySignedWords(),
        past,
        memory);
  }

  @Override
  public <T> T inTransaction(Supplier<T> work) {
    int entriesBefore = entries.size();
    int protocolsBefore = protocols.size();
    List<PopulationShelf.Kept> populationsBefore = List.copyOf(populations);
    int viewsBefore = views.size();
    int daysBefore = days.size();
    List<ClinicVial> vialsBefore = List.copyOf(clinicVials);
    boolean isDone = false;
    depth++;
    try {
      T result = work.get();
      isDone = true;
      return result;
    } finally {
      depth--;
      if (!isDone) {
        entries.subList(entriesBefore, entries.size()).clear();
        protocols.subList(protocolsBefore, protocols.size()).clear();
        populations.clear();
        populations.addAll(populationsBefore);
        views.subList(viewsBefore, views.size()).clear();
        days.subList(daysBefore, days.size()).clear();
        clinicVials.clear();
        clinicVials.addAll(vialsBefore);
      }
    }
  }

  private void requireTransaction() {
    require(depth > 0, "a write outside a transaction");
  }

  private long nextNumber() {
    return entries.size() + views.size() + days.size() + 1L;
  }

  private static void require(boolean holds, String otherwise) {
    if (!holds) {
      throw new IllegalStateException("bug: " + otherwise);
    }
  }

  private final class InMemorySignedWords implements SignedWords {

    @Override
    public Optional<Signature> signed(int version) {
      return Optional.ofNullable(signedWords.get(version));
    }

    @Override
    public void sign(int version, AccountId by, Instant at) {
      requireTransaction();
      signedWords.putIfAbsent(version, new Signature(by, at));
    }
  }

  private final class InMemoryClinicVials implements ClinicVialShelf {

    @Override
    public List<ClinicVial> kept() {
      return List.copyOf(clinicVials);
    }

    @Override
    public void add(Vial vial, AccountId by, Instant at) {
      requireTransaction();
      vialNumber++;
      clinicVials.add(new ClinicVial(new EntryId(new UUID(8, vialNumber).toString()), vial));
    }

    @Override
    public void amend(ClinicVial vial, AccountId by, Instant at, String reason) {
      requireTransaction();
      clinicVials.replaceAll(one -> one.id().equals(vial.id()) ? vial : one);
    }

    @Override
    public void finish(EntryId vial, AccountId by, Instant at, String reason) {
      requireTransaction();
      clinicVials.removeIf(one -> one.id().equals(vial));
    }
  }

  private final class InMemoryCourses implements Courses {

    @Override
    public List<CourseId> all() {
      return entries.reversed().stream()
          .filter(stored -> stored.entry().fact() instanceof CourseOpened)
          .filter(stored -> stored.entry().corrects().isEmpty())
          .map(Stored::course)
          .toList();
    }

    @Override
    public List<CourseId> underObservation() {
      return all().stream()
          .filter(id -> find(id).filter(file -> !file.observing().isEmpty()).isPresent())
          .toList();
    }

    @Override
    public List<CourseId> leftWhileFirm() {
      return all().stream()
          .filter(
              id ->
                  find(id).orElseThrow().entries().stream()
                      .anyMatch(
                          entry ->
                              entry.fact() instanceof CourseFact.InjectionReported report
                                  && report.observation().isPresent()
                                  && report.soft() instanceof SoftAfter.AtLeast))
          .toList();
    }

    @Override
    public Optional<CourseFile> find(CourseId id) {
      List<CourseEntry> own =
          entries.stream().filter(stored -> stored.course().equals(id)).map(Stored::entry).toList();
      return own.isEmpty() ? Optional.empty() : Optional.of(new CourseFile(id, own));
    }

    @Override
    public List<CourseId> alike(Patient patient) {
      return entries.reversed().stream()
          .filter(
              stored ->
                  stored.entry().fact() instanceof CourseOpened opened
                      && opened.patient().isLike(patient))
          .map(Stored::course)
          .distinct()
          .toList();
    }

    @Override
    public long append(NewEntry entry) {
      requireTransaction();
      Optional<CourseFile> file = find(entry.course());
      boolean opens = entry.fact() instanceof CourseOpened && entry.corrects().isEmpty();
      require(file.isEmpty() == opens, "a course is opened by its first entry, and only once");
      boolean correctsOwn =
          entry
              .corrects()
              .map(id -> file.orElseThrow().entries().stream().anyMatch(e -> e.id().equals(id)))
              .orElse(true);
      require(correctsOwn, "an entry that corrects one of another course");
      long number = nextNumber();
      entries.add(
          new Stored(
              entry.course(),
              new CourseEntry(
                  number,
                  new EntryId(new UUID(7, number).toString()),
                  entry.at().truncatedTo(ChronoUnit.MILLIS),
                  entry.by(),
                  entry.corrects(),
                  entry.reason(),
                  AsStored.toTheMillisecond(entry.fact()))));
      return number;
    }
  }

  private final class InMemoryRoomDays implements RoomDays {

    @Override
    public Optional<LocalDate> lastClosed() {
      return days.stream().max(Comparator.naturalOrder());
    }

    @Override
    public void close(LocalDate day, AccountId by, Instant at) {
      requireTransaction();
      require(!days.contains(day), "a day that is closed twice");
      days.add(day);
    }
  }

  private final class InMemoryShelf implements ProtocolShelf {

    @Override
    public List<Signed> all() {
      return List.copyOf(protocols);
    }

    @Override
    public Optional<Signed> find(String name, int version) {
      return protocols.stream()
          .filter(signed -> signed.name().equals(name) && signed.version() == version)
          .findFirst();
    }

    @Override
    public void append(Signed signed) {
      requireTransaction();
      require(find(signed.name(), signed.version()).isEmpty(), "signed already");
      protocols.add(
          new Signed(
              signed.name(),
              signed.version(),
              signed.document(),
              signed.confirmed(),
              signed.by(),
              signed.at().truncatedTo(ChronoUnit.MILLIS)));
    }
  }

  private final class InMemoryPopulations implements PopulationShelf {

    @Override
    public List<Kept> all() {
      return List.copyOf(populations);
    }

    private Optional<Kept> find(String name, int version) {
      return populations.stream()
          .filter(kept -> kept.signed().name().equals(name) && kept.signed().version() == version)
          .findFirst();
    }

    @Override
    public void append(PopulationShelf.Signed signed) {
      requireTransaction();
      require(find(signed.name(), signed.version()).isEmpty(), "signed already");
      populations.add(
          new Kept(
              new PopulationShelf.Signed(
                  signed.name(),
                  signed.version(),
                  signed.document(),
                  signed.preparations(),
                  signed.by(),
                  AsStored.milliseconds(signed.at())),
              Optional.empty()));
    }

    @Override
    public void withdraw(String name, int version, Withdrawn withdrawn) {
      requireTransaction();
      Optional<Kept> found = find(name, version).filter(kept -> kept.withdrawn().isEmpty());
      require(found.isPresent(), "not there or withdrawn already");
      populations.set(
          populations.indexOf(found.orElseThrow()),
          new Kept(
              found.orElseThrow().signed(),
              Optional.of(
                  new Withdrawn(
                      withdrawn.by(), AsStored.milliseconds(withdrawn.at()), withdrawn.reason()))));
    }
  }

  private final class InMemoryAudit implements Audit {

    @Override
    public void append(Viewed viewed) {
      requireTransaction();
      views.add(new StoredView(nextNumber(), viewed));
    }

    @Override
    public List<Look> of(CourseId course, long before, int most) {
      return views.reversed().stream()
          .filter(stored -> stored.number() < before)
          .filter(stored -> stored.viewed().courses().contains(course))
          .limit(most)
          .map(InMemoryRecord::look)
          .toList();
    }
  }

  private static Look look(StoredView stored) {
    Viewed viewed = stored.viewed();
    return new Look(
        stored.number(),
        viewed.by(),
        viewed.at().truncatedTo(ChronoUnit.MILLIS),
        viewed.screen(),
        viewed.outcome());
  }
}
