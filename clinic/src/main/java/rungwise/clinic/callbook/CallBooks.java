package rungwise.clinic.callbook;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.OutsideText;
import rungwise.clinic.Transactions;
import rungwise.clinic.callbook.CallProtocol.Asks;
import rungwise.clinic.callbook.CallProtocol.Step;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.reach.Telephone;
import rungwise.dosing.urgent.CallStep.Shown;
import rungwise.dosing.urgent.rescue.PublishedScheme;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.Typed;
import rungwise.quantities.Fault;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;

/** Keeps the clinic's protocol for calls and its list of emergency departments. */
public final class CallBooks {

  /** The fields of the protocol; those of a step carry its number. */
  public static final String ASKS = "asks-";

  public static final String SHOWN = "shown-";
  public static final String STEP = "step-";
  public static final String NUMBER = "number";
  public static final String IN_AN_HOUR = "in-an-hour";
  public static final String INTERVAL = "interval";

  /** The fields of a department. */
  public static final String ENTRY = "entry";

  public static final String NAME = "name";
  public static final String TOWN = "town";
  public static final String TELEPHONE = "telephone";
  public static final String CAN = "can";
  public static final String NOTE = "note";
  public static final String REASON = "reason";

  /** How many steps a protocol may have. */
  public static final int MOST_STEPS = 16;

  private static final int LONGEST_STEP = 300;
  private static final int LONGEST = 200;
  private static final TimeSpan LONGEST_INTERVAL = TimeSpan.ofHours(1);

  /** The largest sum in an hour that anything published names. */
  private static final Mass MOST_IN_AN_HOUR = PublishedScheme.EAU.inAnHour().orElseThrow();

  private final CallBook book;
  private final Transactions transactions;
  private final InstantSource clock;

  /** The use cases, over the clinic's own book. */
  public CallBooks(CallBook book, Transactions transactions, InstantSource clock) {
    this.book = book;
    this.transactions = transactions;
    this.clock = clock;
  }

  /** The version in force; empty while the sample stands. */
  public Optional<CallBook.Signed> signed() {
    return book.signed().stream().reduce((earlier, later) -> later);
  }

  /** What is done in a call: what was signed last, or the sample. */
  public CallProtocol protocol() {
    return signed().map(CallBook.Signed::protocol).orElse(CallProtocol.SAMPLE);
  }

  public List<CallBook.Kept> departments() {
    return book.departments();
  }

  /** The number of the last entry that a printed page is made of. */
  public long edition() {
    return book.edition();
  }

  /** Who printed which edition, the last first. */
  public List<CallBook.Printed> printed() {
    return book.printed().reversed();
  }

  /** Whether the edition of now was never printed. */
  public boolean isToPrint() {
    return book.printed().stream().noneMatch(one -> one.edition() == book.edition());
  }

  /** Writes down that somebody printed an edition, which must be that of now. */
  public Reading<Long> print(Account actor, long edition) {
    return transactions.inTransaction(
        () -> {
          if (edition != book.edition()) {
            return Reading.refused(
                "It has changed since you opened the page: open it again and print that.");
          }
          book.print(edition, actor.id(), now());
          return Reading.of(edition);
        });
  }

  private Instant now() {
    return clock.instant();
  }

  /** Signs the next version of the protocol; all faults at once. */
  public Reading<Integer> sign(Account actor, Map<String, String> typed) {
    if (!actor.may(Role.PRESCRIBER)) {
      return Reading.refused("Only a prescriber can do that.");
    }
    return switch (read(typed)) {
      case Reading.Refused<CallProtocol> refused -> new Reading.Refused<>(refused.placed());
      case Reading.Read<CallProtocol> read ->
          transactions.inTransaction(
              () -> {
                book.sign(read.value(), actor.id(), now());
                return Reading.of(book.signed().size());
              });
    };
  }

  private static String text(Map<String, String> typed, String field) {
    return typed.getOrDefault(field, "").strip();
  }

  private static Reading<CallProtocol> read(Map<String, String> typed) {
    var faults = new ArrayList<Fault>();
    var steps = new ArrayList<Step>();
    for (int line = 1; line <= MOST_STEPS; line++) {
      if (!text(typed, STEP + line).isEmpty()) {
        step(typed, line, faults).ifPresent(steps::add);
      }
    }
    if (steps.isEmpty() && faults.isEmpty()) {
      faults.add(new Fault(STEP + 1, "No step is written: write at least one."));
    }
    Optional<String> number = line(typed, NUMBER, "The number for nights", faults);
    Optional<RescueLimits> limits = limits(typed, faults);
    return faults.isEmpty()
        ? Reading.of(new CallProtocol(steps, number.orElseThrow(), limits.orElseThrow()))
        : new Reading.Refused<>(faults);
  }

  private static Optional<String> line(
      Map<String, String> typed, String field, String what, List<Fault> faults) {
    Reading<String> read = OutsideText.line(what, text(typed, field), LONGEST).at(field);
    faults.addAll(read.placed());
    return read.found();
  }

  private static Optional<Step> step(Map<String, String> typed, int line, List<Fault> faults) {
    Reading<String> words =
        OutsideText.line("Step " + line, text(typed, STEP + line), LONGEST_STEP).at(STEP + line);
    faults.addAll(words.placed());
    Optional<Asks> asks = Asks.of(text(typed, ASKS + line));
    if (asks.isEmpty()) {
      faults.add(new Fault(ASKS + line, "Choose who does step " + line + "."));
    }
    Optional<Shown> shown =
        Arrays.stream(Shown.values())
            .filter(one -> one.name().equals(text(typed, SHOWN + line)))
            .findFirst();
    if (shown.isEmpty()) {
      faults.add(new Fault(SHOWN + line, "Choose when step " + line + " is shown."));
    }
    boolean isTooLong =
        asks.filter(one -> one == Asks.HE).isPresent()
            && shown.filter(one -> one != Shown.BEFORE_FOUR_HOURS).isPresent();
    if (isTooLong) {
      faults.add(
          new Fault(
              SHOWN + line,
              "Step "
                  + line
                  + " is done by himself at home, which is over at 4 hours: choose before 4"
                  + " hours."));
    }
    return words.found().isPresent() && asks.isPresent() && shown.isPresent() && !isTooLong
        ? Optional.of(new Step(asks.get(), shown.get(), words.orThrow()))
        : Optional.empty();
  }

  private static Optional<RescueLimits> limits(Map<String, String> typed, List<Fault> faults) {
    Optional<Mass> sum = Optional.empty();
    switch (Typed.dose(text(typed, IN_AN_HOUR))) {
      case Typed.Read<Mass> read -> sum = Optional.of(read.value());
      case Typed.Refused<Mass> refused -> faults.add(new Fault(IN_AN_HOUR, refused.why().words()));
    }
    if (sum.filter(mass -> mass.picograms() == 0 || mass.isMoreThan(MOST_IN_AN_HOUR)).isPresent()) {
      faults.add(
          new Fault(
              IN_AN_HOUR,
              sum.get().in(MassUnit.MICROGRAM)
                  + " in an hour: sign more than 0 and at most "
                  + MOST_IN_AN_HOUR.in(MassUnit.MICROGRAM)
                  + ", the largest published sum. Above it the treating clinician gives a reason"
                  + " each time."));
      sum = Optional.empty();
    }
    Reading<TimeSpan> every = TimeSpan.parseMinutes(text(typed, INTERVAL)).at(INTERVAL);
    faults.addAll(every.placed());
    Optional<TimeSpan> interval = every.found();
    if (interval
        .filter(
            span ->
                span.isLessThan(RescueLimits.FLOOR.value()) || span.isMoreThan(LONGEST_INTERVAL))
        .isPresent()) {
      faults.add(
          new Fault(
              INTERVAL,
              interval.get()
                  + " between two doses: sign "
                  + RescueLimits.FLOOR.value()
                  + " to "
                  + LONGEST_INTERVAL
                  + "."));
      interval = Optional.empty();
    }
    Optional<TimeSpan> span = interval;
    return sum.flatMap(mass -> span.map(one -> new RescueLimits(mass, one)));
  }

  /** Adds a department, or puts it in the place of an earlier entry. */
  public Reading<String> keep(Account actor, Map<String, String> typed) {
    if (!mayKeep(actor)) {
      return Reading.refused(NOT_KEEPER);
    }
    var faults = new ArrayList<Fault>();
    Optional<String> name = line(typed, NAME, "The name", faults);
    Optional<String> town = line(typed, TOWN, "The town", faults);
    Reading<String> telephone = Telephone.read(text(typed, TELEPHONE)).at(TELEPHONE);
    faults.addAll(telephone.placed());
    String can = ifAny(typed, CAN, "What it can do", faults);
    String note = ifAny(typed, NOTE, "The note", faults);
    Optional<EntryId> instead = find(text(typed, ENTRY)).map(CallBook.Kept::entry);
    if (instead.isEmpty() && !text(typed, ENTRY).isEmpty()) {
      faults.add(new Fault(NAME, NOT_THERE));
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    var department =
        new Department(name.orElseThrow(), town.orElseThrow(), telephone.orThrow(), can, note);
    return transactions.inTransaction(
        () -> {
          book.keep(department, instead, actor.id(), now());
          return Reading.of(department.name());
        });
  }

  private static final String NOT_KEEPER =
      "Only an administrator or a programme lead keeps this list.";
  private static final String NOT_THERE =
      "This department is not on the list any more: open the list again.";

  /** Whether somebody keeps the list of departments. */
  public static boolean mayKeep(Account actor) {
    return actor.may(Role.ADMINISTRATOR) || actor.may(Role.PROGRAMME_LEAD);
  }

  private Optional<CallBook.Kept> find(String entry) {
    return book.departments().stream().filter(one -> one.entry().text().equals(entry)).findFirst();
  }

  private static String ifAny(
      Map<String, String> typed, String field, String what, List<Fault> faults) {
    return text(typed, field).isEmpty() ? "" : line(typed, field, what, faults).orElse("");
  }

  /** Takes a department off the list, with the reason. */
  public Reading<String> remove(Account actor, Map<String, String> typed) {
    if (!mayKeep(actor)) {
      return Reading.refused(NOT_KEEPER);
    }
    Optional<CallBook.Kept> kept = find(text(typed, ENTRY));
    if (kept.isEmpty()) {
      return Reading.refused(new Fault(NAME, NOT_THERE));
    }
    var faults = new ArrayList<Fault>();
    Optional<String> reason = line(typed, REASON, "The reason", faults);
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return transactions.inTransaction(
        () -> {
          book.remove(kept.get().entry(), actor.id(), now(), reason.orElseThrow());
          return Reading.of(kept.get().department().name());
        });
  }
}
