package rungwise.store.words;

import java.time.LocalDate;
import java.util.Optional;
import rungwise.clinic.befell.VialWord;
import rungwise.clinic.befell.VialWord.Gone;
import rungwise.clinic.befell.VialWord.How;
import rungwise.clinic.befell.VialWord.Judged;
import rungwise.clinic.befell.VialWord.Place;
import rungwise.clinic.befell.VialWord.Put;
import rungwise.clinic.befell.VialWord.Warm;
import rungwise.clinic.course.CourseFact.VialBefell;
import rungwise.clinic.course.EntryId;
import rungwise.store.schema.tables.records.VialBefellRecord;

/** What befell vials, as rows and back. */
public final class BefellRows {

  /** What a row says. */
  private enum Kind {
    WARM,
    PUT,
    GONE,
    JUDGED
  }

  private BefellRows() {}

  public static VialBefellRecord row(VialBefell befell) {
    var row = new VialBefellRecord();
    row.setVial(befell.vial().text());
    row.setSinceDay(befell.word().since().orElse(null));
    switch (befell.word()) {
      case Warm warm -> {
        row.setWord(Tokens.of(Kind.WARM));
        row.setCelsius(warm.celsius().orElse(null));
        row.setLeastHours(warm.least().orElse(null));
        row.setMostHours(warm.most().orElse(null));
      }
      case Put put -> {
        row.setWord(Tokens.of(Kind.PUT));
        row.setPlace(Tokens.of(put.place()));
      }
      case Gone gone -> {
        row.setWord(Tokens.of(Kind.GONE));
        row.setHow(Tokens.of(gone.how()));
      }
      case Judged judged -> row.setWord(Tokens.of(Kind.JUDGED));
    }
    return row;
  }

  public static VialBefell befell(VialBefellRecord row) {
    return new VialBefell(new EntryId(row.getVial()), word(row));
  }

  private static VialWord word(VialBefellRecord row) {
    return switch (Tokens.read(Kind.class, row.getWord())) {
      case WARM ->
          new Warm(
              day(row),
              Optional.ofNullable(row.getCelsius()),
              Optional.ofNullable(row.getLeastHours()),
              Optional.ofNullable(row.getMostHours()));
      case PUT -> new Put(day(row), Tokens.read(Place.class, row.getPlace()));
      case GONE -> new Gone(day(row), Tokens.read(How.class, row.getHow()));
      case JUDGED -> new Judged();
    };
  }

  private static LocalDate day(VialBefellRecord row) {
    return Optional.ofNullable(row.getSinceDay()).orElseThrow();
  }
}
