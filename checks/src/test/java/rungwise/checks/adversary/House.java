package rungwise.checks.adversary;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rungwise.checks.adversary.law.Mix;
import rungwise.checks.adversary.law.Rulebook;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.call.Calls;
import rungwise.clinic.call.Rescues;
import rungwise.clinic.clock.ClockCheck;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInName;
import rungwise.clinic.populations.PopulationPorts;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.reaching.Reaching;
import rungwise.clinic.room.Room;
import rungwise.clinic.running.Running;
import rungwise.clinic.screening.Screenings;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.start.CourseDraft;
import rungwise.clinic.start.Starting;
import rungwise.clinic.supply.Vials;
import rungwise.clinic.takeover.TakingOver;
import rungwise.clinic.teaching.Teaching;
import rungwise.clinic.titration.Lifting;
import rungwise.clinic.titration.Titration;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.supply.InUseRule;
import rungwise.files.PopulationDocuments;
import rungwise.files.SampleProtocolReader;
import rungwise.files.SampleProtocols;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * A clinic in memory with the product's own use cases: one man at a time, a clock that is set, and
 * UTC on the wall. Minutes count from 1970.
 */
final class House {

  static final Account PRESCRIBER = account(1, "pia.prescriber", Role.PRESCRIBER);
  static final Account EDUCATOR = account(2, "eva.educator", Role.NURSE_EDUCATOR);
  static final Account ON_CALL = account(3, "oda.oncall", Role.ON_CALL_CLINICIAN);
  static final Account AUDITOR = account(4, "ada.auditor", Role.AUDITOR);

  private static final Volume MOST = Volume.ofMicrolitres(1000);

  private static final String READY_FOR_A_YEAR =
      "\nreadiness_months:\n  value: 12\n  source: {common_practice: \"gone over yearly\"}\n";

  final Memory memory = new Memory();
  final Titration titration;
  final Lifting lifting;
  final Calls calls;
  final Running running;
  final Reaching reaching;
  final Screenings screenings;
  final Vials vials;
  final Teaching teaching;
  final Room room;
  private final StandingPorts ports;
  private final Starting starting;
  private final CourseReader reader;
  private final Map<PreparationId, Preparation> preparations = new HashMap<>();
  private final Map<PreparationId, Instant> recalled = new HashMap<>();
  private final Map<String, Integer> versions = new HashMap<>();
  private Instant now = Instant.ofEpochSecond(Life.START * 60);
  private long ids;
  private Optional<CourseId> course = Optional.empty();
  private Optional<Asked> asked = Optional.empty();
  private Optional<CourseState> answer = Optional.empty();

  House() {
    for (Mix mix : Mix.values()) {
      preparations.put(new PreparationId(mix.id), preparation(mix));
    }
    signProtocols();
    var nothing = new Memory.Nothing();
    Populations populations = populations(nothing);
    var protocols =
        new Protocols(
            memory.new Shelf(),
            new SampleProtocolReader(),
            memory,
            () -> now,
            populations::canKeepLimitsOf);
    ports =
        new StandingPorts(
            memory,
            memory.new Past(),
            protocols,
            populations,
            this::find,
            this::labelled,
            House::inUse,
            id -> Optional.ofNullable(recalled.get(id)),
            memory,
            () -> now,
            ClockCheck.GIVEN,
            new ClinicTime(ZoneId.of("UTC")));
    titration = new Titration(ports);
    lifting = new Lifting(ports);
    calls = new Calls(ports, () -> List.of(PRESCRIBER, EDUCATOR, ON_CALL));
    running = new Running(ports);
    reaching = new Reaching(ports);
    screenings = new Screenings(ports);
    vials = new Vials(ports);
    teaching = new Teaching(ports);
    room = new Room(ports, nothing, nothing, () -> List.of(PRESCRIBER, EDUCATOR, ON_CALL));
    starting = new Starting(ports, preparations::containsKey, () -> new UUID(5, ++ids));
    reader = new CourseReader(ports);
  }

  TakingOver takingOver() {
    return new TakingOver(ports);
  }

  private Optional<Preparation> labelled(String composition) {
    return preparations.values().stream()
        .filter(one -> one.composition().equals(composition))
        .findFirst();
  }

  private Populations populations(Memory.Nothing nothing) {
    return new Populations(
        new PopulationPorts(
            nothing,
            new PopulationDocuments(),
            this::find,
            () -> List.copyOf(preparations.values()),
            memory,
            () -> now));
  }

  private static Account account(int number, String name, Role role) {
    return new Account(
        AccountId.of(new UUID(9, number)),
        new SignInName(name),
        "Name of " + name,
        Set.of(role),
        AccountState.ACTIVE);
  }

  private Optional<Preparation> find(PreparationId id) {
    return Optional.ofNullable(preparations.get(id));
  }

  private static InUseRule inUse(PreparationId id) {
    Mix mix =
        Arrays.stream(Mix.values())
            .filter(one -> one.id.equals(id.value()))
            .findFirst()
            .orElseThrow();
    if (mix.powder) {
      return new InUseRule.SingleUse();
    }
    return mix.daysOpen == 0
        ? new InUseRule.NotStated()
        : new InUseRule.DaysAfterOpening(mix.daysOpen);
  }

  private static Preparation preparation(Mix mix) {
    var ingredients = new ArrayList<Ingredient>();
    Component[] components = {Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL};
    for (int i = 0; i < components.length; i++) {
      if (mix.has(i)) {
        String unit = components[i] == Component.ALPROSTADIL ? " mcg/mL" : " mg/mL";
        Optional<Mass> limit =
            mix.isAlone() ? Optional.of(Mass.parse("60 mcg").orThrow()) : Optional.empty();
        ingredients.add(
            new Ingredient(
                components[i], Concentration.parse(mix.number(i) + unit).orThrow(), limit));
      }
    }
    return new Preparation(
        new PreparationId(mix.id),
        "Mix " + mix.id,
        mix.powder ? new Form.Powder(MOST, TimeSpan.ofHours(24)) : new Form.Solution(),
        ingredients,
        MOST,
        Optional.empty());
  }

  /**
   * Every sample; the label again with more days for which it is fresh, and the mixture's for other
   * compositions.
   */
  private void signProtocols() {
    for (String document : SampleProtocols.documents()) {
      String name = valueOf("protocol", document);
      keep(name, document);
      String own = document.replace("sample: true", "sample: false");
      if (name.equals(Rulebook.LABEL.name())) {
        keep(
            Rulebook.LONGER_FRESH.name(),
            own.replace("fresh_days:\n  value: 1\n", "fresh_days:\n  value: 30\n")
                + READY_FOR_A_YEAR);
      }
      if (name.equals(Rulebook.MIXTURE.name())) {
        keep(Rulebook.WEAKER_MIXTURE.name(), composedAs(Mix.M15_05_5, own));
        keep(Rulebook.STRONGER_MIXTURE.name(), composedAs(Mix.M30_2_20, own));
      }
    }
  }

  private static String valueOf(String key, String document) {
    return document
        .lines()
        .filter(line -> line.startsWith(key + ": "))
        .findFirst()
        .orElseThrow()
        .substring(key.length() + 2)
        .strip();
  }

  private static String composedAs(Mix mix, String document) {
    return document.replaceFirst(
        "(?m)^composition: .*$",
        "composition: ["
            + mix.number(0)
            + " mg/mL of papaverine, "
            + mix.number(1)
            + " mg/mL of phentolamine, "
            + mix.number(2)
            + " mcg/mL of alprostadil]");
  }

  private void keep(String name, String document) {
    int version = Integer.parseInt(valueOf("version", document));
    versions.put(name, version);
    memory.keep(
        name,
        version,
        document.replaceFirst("(?m)^protocol: .*$", "protocol: " + name),
        PRESCRIBER.id());
  }

  /** The version of a protocol that is signed here. */
  int versionOf(Rulebook rules) {
    return Objects.requireNonNull(versions.get(rules.name()));
  }

  /** A new man on a plan. */
  Reading<CourseId> open(Mix mix, String barrel, Rulebook rules, String group) {
    memory.begin();
    recalled.clear();
    Reading<CourseId> opened =
        starting.open(
            EDUCATOR,
            new CourseDraft(
                "A Man",
                "1961-04-30",
                "MR-1",
                group,
                mix.id,
                barrel,
                rules.name() + " version " + versionOf(rules),
                /* namesakeConfirmed= */ true));
    course = opened.found();
    return opened;
  }

  boolean isInUse(PreparationId id) {
    return preparations.containsKey(id) && !recalled.containsKey(id);
  }

  /** The clinic takes a preparation out of use. */
  void recall(Mix mix) {
    recalled.put(new PreparationId(mix.id), now);
  }

  CourseId course() {
    return course.orElseThrow();
  }

  CourseFile file() {
    return memory.find(course()).orElseThrow();
  }

  Instant now() {
    return now;
  }

  void setClock(long minute) {
    now = Instant.ofEpochSecond(minute * 60);
  }

  /** What an answer rests on. */
  private record Asked(long minute, long entries, int recalled, boolean isSound, CourseFile file) {}

  /** The log of rescues, under the sample of the limits. */
  Rescues rescues() {
    return new Rescues(ports, Optional::empty);
  }

  /** What the product says of the record at a minute; the same question is asked once. */
  CourseState ask(long minute) {
    var question =
        new Asked(minute, memory.lastNumber(), recalled.size(), memory.isSound(), file());
    if (!asked.equals(Optional.of(question)) || answer.isEmpty()) {
      asked = Optional.of(question);
      answer = Optional.of(reader.state(question.file(), Instant.ofEpochSecond(minute * 60)));
    }
    return answer.get();
  }
}
