package rungwise.clinic.clock;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.ClockText;
import rungwise.clinic.Transactions;
import rungwise.clinic.people.Account;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * A person compares the server's date and time with another clock, and writes down what that says.
 * It is typed, not clicked: what is clicked every day is not read.
 */
public final class ClockConfirming {

  public static final String DATE = "date";
  public static final String TIME = "time";

  /** A watch may be a little off, and typing takes time. */
  private static final Duration NEAR = Duration.ofMinutes(5);

  private final ClockWatch watch;
  private final ClockEntries entries;
  private final Transactions transactions;
  private final InstantSource clock;
  private final ClinicTime time;

  public ClockConfirming(
      ClockWatch watch,
      ClockEntries entries,
      Transactions transactions,
      InstantSource clock,
      ClinicTime time) {
    this.watch = watch;
    this.entries = entries;
    this.transactions = transactions;
    this.clock = clock;
    this.time = time;
  }

  /** Takes date and time as somebody reads them elsewhere; gives when that was. */
  public Reading<Instant> confirm(Account actor, String date, String clockTime) {
    Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
    var faults = new ArrayList<Fault>();
    Optional<LocalDate> day = take(faults, DATE, ClinicTime.readDate(date));
    Optional<LocalTime> at = take(faults, TIME, ClockText.read(clockTime));
    if (day.isEmpty() || at.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    List<Instant> meant =
        List.of(Occurrence.FIRST, Occurrence.SECOND, Occurrence.NOT_SAID).stream()
            .flatMap(one -> time.read(day.get(), at.get(), one).found().stream())
            .toList();
    if (meant.stream().noneMatch(one -> isNear(one, now))) {
      return Reading.refused(
          new Fault(
              TIME,
              "The server says "
                  + time.words(now)
                  + " and you wrote "
                  + ClinicTime.words(day.get())
                  + " "
                  + at.get()
                  + ". Look again; if that is right, the clock of the server is wrong: tell your"
                  + " administrator now."));
    }
    transactions.inTransaction(
        () -> {
          entries.confirmed(
              actor.id(),
              now,
              "The server said " + time.words(now) + "; written: " + day.get() + " " + at.get());
          return true;
        });
    watch.confirmed(actor.fullName());
    return Reading.of(now);
  }

  private static boolean isNear(Instant meant, Instant now) {
    return Duration.between(meant, now).abs().compareTo(NEAR) <= 0;
  }

  private static <T> Optional<T> take(List<Fault> faults, String field, Reading<T> reading) {
    faults.addAll(reading.at(field).placed());
    return reading.found();
  }
}
