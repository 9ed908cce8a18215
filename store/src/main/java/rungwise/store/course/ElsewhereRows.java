package rungwise.store.course;

import java.util.Optional;
import org.jooq.TableRecord;
import rungwise.clinic.coded.ToldBy;
import rungwise.clinic.elsewhere.ElsewhereWord;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.course.InjectionRows.SoftKind;
import rungwise.store.schema.tables.records.ElsewhereJoinedRecord;
import rungwise.store.schema.tables.records.ElsewhereWrittenRecord;
import rungwise.store.words.Tokens;

/** What was told of a man who is taken over, as rows and back. */
final class ElsewhereRows {

  /** What a row says. */
  private enum Kind {
    TOLD,
    OPENED
  }

  private ElsewhereRows() {}

  /** What a row of a joined course says. */
  private enum Joining {
    JOINED,
    PARTED
  }

  static TableRecord<?> row(ElsewhereWord word) {
    return switch (word) {
      case ElsewhereWord.Joined(String course, boolean leads) -> row(Joining.JOINED, course, leads);
      case ElsewhereWord.Parted(String course) -> row(Joining.PARTED, course, /* leads= */ false);
      case ElsewhereWord.Told told -> row(told);
      case ElsewhereWord.Opened(PreparationId preparation, Volume upTo) ->
          row(Kind.OPENED, preparation, upTo);
    };
  }

  private static ElsewhereJoinedRecord row(Joining kind, String course, boolean leads) {
    var row = new ElsewhereJoinedRecord();
    row.setWord(Tokens.of(kind));
    row.setCourse(course);
    row.setLeads(leads);
    return row;
  }

  static ElsewhereWord word(ElsewhereJoinedRecord row) {
    return switch (Tokens.read(Joining.class, row.getWord())) {
      case JOINED -> new ElsewhereWord.Joined(row.getCourse(), row.getLeads());
      case PARTED -> new ElsewhereWord.Parted(row.getCourse());
    };
  }

  private static ElsewhereWrittenRecord row(Kind kind, PreparationId preparation, Volume volume) {
    var row = new ElsewhereWrittenRecord();
    row.setWord(Tokens.of(kind));
    row.setPreparation(preparation.value());
    row.setMicrolitres(volume.microlitres());
    return row;
  }

  private static ElsewhereWrittenRecord row(ElsewhereWord.Told told) {
    ElsewhereWrittenRecord row = row(Kind.TOLD, told.preparation(), told.drawn());
    row.setBarrel(told.barrel().orElse(null));
    row.setFromWhere(told.from());
    row.setLastDay(told.lastDay().orElse(null));
    row.setGrade((short) told.grade().number());
    switch (told.soft()) {
      case SoftAfter.Exactly(TimeSpan after) -> soft(row, SoftKind.EXACTLY, Optional.of(after));
      case SoftAfter.AtLeast(TimeSpan seen) -> soft(row, SoftKind.AT_LEAST, Optional.of(seen));
      case SoftAfter.Between(TimeSpan from, TimeSpan before) -> {
        soft(row, SoftKind.BETWEEN, Optional.of(from));
        row.setSoftBeforeMilliseconds(before.milliseconds());
      }
      case SoftAfter.NotKnown notKnown -> soft(row, SoftKind.NOT_KNOWN, Optional.empty());
    }
    row.setToldBy(Tokens.of(told.by()));
    return row;
  }

  private static void soft(ElsewhereWrittenRecord row, SoftKind kind, Optional<TimeSpan> from) {
    row.setSoftAfter(Tokens.of(kind));
    row.setSoftFromMilliseconds(from.map(TimeSpan::milliseconds).orElse(null));
  }

  static ElsewhereWord word(ElsewhereWrittenRecord row) {
    var preparation = new PreparationId(row.getPreparation());
    var volume = Volume.ofMicrolitres(row.getMicrolitres());
    return switch (Tokens.read(Kind.class, row.getWord())) {
      case TOLD ->
          new ElsewhereWord.Told(
              preparation,
              volume,
              Optional.ofNullable(row.getBarrel()),
              row.getFromWhere(),
              Optional.ofNullable(row.getLastDay()),
              Grade.of(row.getGrade()).orElseThrow(),
              soft(row),
              Tokens.read(ToldBy.class, row.getToldBy()));
      case OPENED -> new ElsewhereWord.Opened(preparation, volume);
    };
  }

  private static SoftAfter soft(ElsewhereWrittenRecord row) {
    return switch (Tokens.read(SoftKind.class, row.getSoftAfter())) {
      case EXACTLY -> new SoftAfter.Exactly(new TimeSpan(row.getSoftFromMilliseconds()));
      case AT_LEAST -> new SoftAfter.AtLeast(new TimeSpan(row.getSoftFromMilliseconds()));
      case BETWEEN ->
          new SoftAfter.Between(
              new TimeSpan(row.getSoftFromMilliseconds()),
              new TimeSpan(row.getSoftBeforeMilliseconds()));
      case NOT_KNOWN -> new SoftAfter.NotKnown();
    };
  }
}
