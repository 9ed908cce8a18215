package rungwise.store.words;

import java.time.LocalTime;
import java.time.temporal.ChronoField;
import java.util.Optional;
import rungwise.clinic.reach.Hours;
import rungwise.clinic.reach.ReachWord;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;
import rungwise.store.schema.tables.records.ReachWrittenRecord;

/** What was written of how a man is reached, as rows and back. */
public final class ReachRows {

  /** What a row says. */
  private enum Kind {
    NUMBER_KEPT,
    NUMBER_GONE,
    WISHES_KEPT,
    NOT_REACHED,
    REACHED
  }

  private ReachRows() {}

  public static ReachWrittenRecord row(ReachWord word) {
    var row = new ReachWrittenRecord();
    switch (word) {
      case ReachWord.NumberKept(Telephone telephone) -> fill(row, telephone);
      case ReachWord.NumberGone gone -> row.setWord(Tokens.of(Kind.NUMBER_GONE));
      case ReachWord.WishesKept(Wishes wishes) -> fill(row, wishes);
      case ReachWord.NotReached not -> {
        row.setWord(Tokens.of(Kind.NOT_REACHED));
        row.setNumber(not.number());
        row.setNextTry(not.next());
      }
      case ReachWord.Reached reached -> {
        row.setWord(Tokens.of(Kind.REACHED));
        row.setNumber(reached.number());
      }
    }
    return row;
  }

  private static void fill(ReachWrittenRecord row, Telephone telephone) {
    row.setWord(Tokens.of(Kind.NUMBER_KEPT));
    row.setNumber(telephone.text());
    row.setWhose(Tokens.of(telephone.whose()));
    telephone
        .hours()
        .ifPresent(
            hours -> {
              row.setFromMinute(minute(hours.from()));
              row.setUntilMinute(minute(hours.until()));
            });
    row.setMessage(Tokens.of(telephone.message()));
  }

  private static void fill(ReachWrittenRecord row, Wishes wishes) {
    row.setWord(Tokens.of(Kind.WISHES_KEPT));
    row.setPartner(Tokens.of(wishes.partner()));
    row.setPost(Tokens.of(wishes.post()));
    row.setLanguage(wishes.language());
    row.setInterpreter(Tokens.of(wishes.interpreter()));
  }

  public static ReachWord word(ReachWrittenRecord row) {
    return switch (Tokens.read(Kind.class, row.getWord())) {
      case NUMBER_KEPT ->
          new ReachWord.NumberKept(
              new Telephone(
                  row.getNumber(),
                  Tokens.read(Telephone.Whose.class, row.getWhose()),
                  hours(row),
                  Tokens.read(Telephone.Message.class, row.getMessage())));
      case NUMBER_GONE -> new ReachWord.NumberGone();
      case WISHES_KEPT ->
          new ReachWord.WishesKept(
              new Wishes(
                  Tokens.read(Wishes.Partner.class, row.getPartner()),
                  Tokens.read(Wishes.Post.class, row.getPost()),
                  row.getLanguage(),
                  Tokens.read(Wishes.Interpreter.class, row.getInterpreter())));
      case NOT_REACHED -> new ReachWord.NotReached(row.getNumber(), row.getNextTry());
      case REACHED -> new ReachWord.Reached(row.getNumber());
    };
  }

  private static Optional<Hours> hours(ReachWrittenRecord row) {
    return Optional.ofNullable(row.getFromMinute())
        .map(from -> new Hours(clock(from), clock(row.getUntilMinute())));
  }

  private static int minute(LocalTime clock) {
    return clock.get(ChronoField.MINUTE_OF_DAY);
  }

  private static LocalTime clock(int minute) {
    return LocalTime.MIDNIGHT.plusMinutes(minute);
  }
}
