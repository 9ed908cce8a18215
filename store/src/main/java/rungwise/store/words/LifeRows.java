package rungwise.store.words;

import java.util.Optional;
import rungwise.clinic.coded.AfterEnd;
import rungwise.clinic.coded.EndReason;
import rungwise.clinic.coded.VialsLeft;
import rungwise.clinic.life.LifeWord;
import rungwise.store.schema.tables.records.LifeWrittenRecord;

/** What brings a course to a stand or lets it go on, as rows and back. */
public final class LifeRows {

  /** What a row says. */
  private enum Kind {
    PAUSED,
    RESUMED,
    ENDED,
    REOPENED
  }

  private LifeRows() {}

  public static LifeWrittenRecord row(LifeWord word) {
    return switch (word) {
      case LifeWord.Paused paused -> row(Kind.PAUSED);
      case LifeWord.Resumed resumed -> row(Kind.RESUMED);
      case LifeWord.Ended ended -> row(ended);
      case LifeWord.Reopened reopened -> row(Kind.REOPENED);
    };
  }

  private static LifeWrittenRecord row(Kind kind) {
    var row = new LifeWrittenRecord();
    row.setWord(Tokens.of(kind));
    return row;
  }

  private static LifeWrittenRecord row(LifeWord.Ended ended) {
    LifeWrittenRecord row = row(Kind.ENDED);
    row.setWhy(Tokens.of(ended.why()));
    row.setLastDose(ended.lastDose().orElse(null));
    row.setVials(Tokens.of(ended.vials()));
    row.setAfterEnd(Tokens.of(ended.after()));
    row.setReferredTo(ended.referredTo());
    return row;
  }

  public static LifeWord word(LifeWrittenRecord row) {
    return switch (Tokens.read(Kind.class, row.getWord())) {
      case PAUSED -> new LifeWord.Paused();
      case RESUMED -> new LifeWord.Resumed();
      case ENDED ->
          new LifeWord.Ended(
              Tokens.read(EndReason.class, row.getWhy()),
              Optional.ofNullable(row.getLastDose()),
              Tokens.read(VialsLeft.class, row.getVials()),
              Tokens.read(AfterEnd.class, row.getAfterEnd()),
              row.getReferredTo());
      case REOPENED -> new LifeWord.Reopened();
    };
  }
}
