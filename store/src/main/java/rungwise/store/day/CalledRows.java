package rungwise.store.day;

import static rungwise.store.schema.Tables.DAY_ROW;

import java.time.Instant;
import java.time.LocalTime;
import java.time.temporal.ChronoField;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jooq.Field;
import rungwise.clinic.reach.Hours;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;
import rungwise.clinic.today.DayRow.Reach;
import rungwise.clinic.today.DayRow.Tried;
import rungwise.store.schema.tables.records.DayRowRecord;

/** How a man is called, in a row of the day's list and back. */
final class CalledRows {

  private static final List<Field<?>> CALLED =
      List.of(
          DAY_ROW.CALL_NUMBER,
          DAY_ROW.CALL_WHOSE,
          DAY_ROW.CALL_FROM,
          DAY_ROW.CALL_UNTIL,
          DAY_ROW.CALL_MESSAGE,
          DAY_ROW.CALL_TRIES,
          DAY_ROW.CALL_TRIED_AT,
          DAY_ROW.CALL_DUE);

  private CalledRows() {}

  static void fill(DayRowRecord kept, Reach reach) {
    CALLED.forEach(field -> kept.set(field, null)); // else a row keeps what it held before
    reach.telephone().ifPresent(telephone -> fill(kept, telephone));
    kept.setCallPartner(token(reach.partner()));
    reach
        .tried()
        .ifPresent(
            tried -> {
              kept.setCallTries(tried.tries());
              kept.setCallTriedAt(tried.last().toEpochMilli());
              kept.setCallDue(tried.due().toEpochMilli());
            });
  }

  private static void fill(DayRowRecord kept, Telephone telephone) {
    kept.setCallNumber(telephone.text());
    kept.setCallWhose(token(telephone.whose()));
    kept.setCallMessage(token(telephone.message()));
    telephone
        .hours()
        .ifPresent(
            hours -> {
              kept.setCallFrom(hours.from().get(ChronoField.MINUTE_OF_DAY));
              kept.setCallUntil(hours.until().get(ChronoField.MINUTE_OF_DAY));
            });
  }

  static Reach reach(DayRowRecord kept) {
    return new Reach(
        Optional.ofNullable(kept.getCallNumber()).map(number -> telephone(number, kept)),
        read(Wishes.Partner.class, kept.getCallPartner()),
        Optional.ofNullable(kept.getCallTries())
            .map(
                tries ->
                    new Tried(
                        tries,
                        Instant.ofEpochMilli(kept.getCallTriedAt()),
                        Instant.ofEpochMilli(kept.getCallDue()))));
  }

  private static Telephone telephone(String number, DayRowRecord kept) {
    return new Telephone(
        number,
        read(Telephone.Whose.class, kept.getCallWhose()),
        Optional.ofNullable(kept.getCallFrom())
            .map(from -> new Hours(clock(from), clock(kept.getCallUntil()))),
        read(Telephone.Message.class, kept.getCallMessage()));
  }

  private static LocalTime clock(int minute) {
    return LocalTime.MIDNIGHT.plusMinutes(minute);
  }

  private static String token(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }

  private static <E extends Enum<E>> E read(Class<E> all, String token) {
    return Enum.valueOf(all, token.toUpperCase(Locale.ROOT));
  }
}
