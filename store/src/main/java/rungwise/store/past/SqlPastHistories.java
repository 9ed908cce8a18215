package rungwise.store.past;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.PAST_HISTORY;
import static rungwise.store.schema.Tables.PAST_INJECTION;
import static rungwise.store.schema.Tables.PAST_INJECTION_NAMED;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.TableRecord;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.PastHistoryRecord;
import rungwise.store.schema.tables.records.PastInjectionNamedRecord;
import rungwise.store.schema.tables.records.PastInjectionRecord;

/** The histories in the journal: one entry for each patient of a file. */
public final class SqlPastHistories implements PastHistories {

  private static final String BROUGHT_IN = "past_history_brought_in";
  private static final String WITHDRAWN = "past_history_withdrawn";
  private static final String EXACTLY = "exactly";
  private static final String AT_LEAST = "at_least";
  private static final String BETWEEN = "between";
  private static final String NOT_KNOWN = "not_known";

  private final Database database;
  private final Journal journal;

  public SqlPastHistories(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public List<Kept> of(String recordKey) {
    return where(PAST_HISTORY.RECORD_KEY.eq(recordKey));
  }

  @Override
  public List<Undone> undone(String recordKey) {
    var undoing = ENTRY.as("undoing");
    var of = PAST_HISTORY.RECORD_KEY.eq(recordKey);
    return database
        .reading()
        .select(ENTRY.ID, undoing.ID, undoing.SEQ, undoing.RECORDED_AT, undoing.REASON)
        .from(PAST_HISTORY)
        .join(ENTRY)
        .on(ENTRY.ID.eq(PAST_HISTORY.ENTRY_ID))
        .join(undoing)
        .on(undoing.CORRECTS.eq(ENTRY.ID))
        .where(of)
        .orderBy(undoing.SEQ)
        .fetch()
        .map(
            row ->
                new Undone(
                    read(of.and(ENTRY.ID.eq(row.get(ENTRY.ID)))).getFirst(),
                    new EntryId(row.get(undoing.ID)),
                    row.get(undoing.SEQ),
                    row.get(undoing.RECORDED_AT),
                    row.get(undoing.REASON)));
  }

  @Override
  public List<Kept> all() {
    return where(DSL.noCondition());
  }

  private Condition counts() {
    var later = ENTRY.as("later");
    return DSL.notExists(
        database.reading().selectOne().from(later).where(later.CORRECTS.eq(ENTRY.ID)));
  }

  private List<Kept> where(Condition condition) {
    return read(condition.and(counts()));
  }

  private List<Kept> read(Condition condition) {
    Result<Record> heads =
        database
            .reading()
            .select()
            .from(PAST_HISTORY)
            .join(ENTRY)
            .on(ENTRY.ID.eq(PAST_HISTORY.ENTRY_ID))
            .where(condition)
            .orderBy(ENTRY.SEQ)
            .fetch();
    if (heads.isEmpty()) {
      return List.of();
    }
    Map<String, Result<Record>> lines =
        database
            .reading()
            .select(PAST_INJECTION.fields())
            .select(PAST_INJECTION_NAMED.PREPARATION)
            .from(PAST_HISTORY)
            .join(ENTRY)
            .on(ENTRY.ID.eq(PAST_HISTORY.ENTRY_ID))
            .join(PAST_INJECTION)
            .on(PAST_INJECTION.ENTRY_ID.eq(PAST_HISTORY.ENTRY_ID))
            .leftJoin(PAST_INJECTION_NAMED)
            .on(PAST_INJECTION_NAMED.ENTRY_ID.eq(PAST_INJECTION.ENTRY_ID))
            .and(PAST_INJECTION_NAMED.LINE.eq(PAST_INJECTION.LINE))
            .where(condition)
            .orderBy(PAST_INJECTION.ENTRY_ID, PAST_INJECTION.LINE)
            .fetch()
            .intoGroups(PAST_INJECTION.ENTRY_ID);
    return heads.map(row -> kept(row, lines));
  }

  private static Kept kept(Record row, Map<String, Result<Record>> lines) {
    Result<Record> own = lines.get(row.get(PAST_HISTORY.ENTRY_ID));
    List<PastInjection> injections = new ArrayList<>();
    if (own != null) {
      own.forEach(
          line ->
              injections.add(
                  injection(
                      line.into(PAST_INJECTION), line.get(PAST_INJECTION_NAMED.PREPARATION))));
    }
    return new Kept(
        row.get(ENTRY.SEQ),
        row.get(ENTRY.RECORDED_AT),
        row.get(PAST_HISTORY.IMPORT_ID),
        new PastHistory(
            row.get(PAST_HISTORY.PATIENT), row.get(PAST_HISTORY.AETIOLOGY_GROUP), injections));
  }

  private static PastInjection injection(PastInjectionRecord row, @Nullable String named) {
    return new PastInjection(
        row.getFileLine(),
        row.getInjection(),
        Volume.ofMicrolitres(row.getVolumeMicrolitres()),
        Double.parseDouble(row.getPotency()),
        Optional.of(row.getStrength()).filter(said -> !said.isEmpty()).map(Double::valueOf),
        Grade.of(row.getGrade()).orElseThrow(),
        soft(row),
        Optional.ofNullable(row.getInjectedAt())
            .map(
                at ->
                    new PastInjection.Setting(
                        at, new PreparationId(row.getPreparation()), row.getBarrel())),
        Optional.ofNullable(named).map(PreparationId::new));
  }

  private static SoftAfter soft(PastInjectionRecord row) {
    return switch (row.getSoftAfter()) {
      case EXACTLY -> new SoftAfter.Exactly(new TimeSpan(row.getSoftFromMilliseconds()));
      case AT_LEAST -> new SoftAfter.AtLeast(new TimeSpan(row.getSoftFromMilliseconds()));
      case BETWEEN ->
          new SoftAfter.Between(
              new TimeSpan(row.getSoftFromMilliseconds()),
              new TimeSpan(row.getSoftBeforeMilliseconds()));
      case NOT_KNOWN -> new SoftAfter.NotKnown();
      default ->
          throw new IllegalStateException(
              "The journal was changed by another program: \"" + row.getSoftAfter() + "\"");
    };
  }

  @Override
  public void append(String importId, String source, PastHistory history, Instant at) {
    var rows = new ArrayList<TableRecord<?>>();
    var head = new PastHistoryRecord();
    head.setImportId(importId);
    head.setSourceFile(source);
    head.setPatient(history.patient());
    head.setRecordKey(history.recordKey());
    head.setAetiologyGroup(history.group());
    rows.add(head);
    int line = 0;
    for (PastInjection injection : history.injections()) {
      line++;
      rows.add(row(injection, line));
      if (injection.named().isPresent()) {
        rows.add(named(injection.named().get(), line));
      }
    }
    journal.append(
        NewEntry.of(BROUGHT_IN, at, AccountId.PROGRAM.text()), rows.toArray(TableRecord<?>[]::new));
  }

  private static PastInjectionNamedRecord named(PreparationId preparation, int line) {
    var row = new PastInjectionNamedRecord();
    row.setLine(line);
    row.setPreparation(preparation.value());
    return row;
  }

  private static PastInjectionRecord row(PastInjection injection, int line) {
    var row = new PastInjectionRecord();
    row.setLine(line);
    row.setFileLine(injection.line());
    row.setInjection(injection.number());
    row.setVolumeMicrolitres(injection.volume().microlitres());
    row.setPotency(Double.toString(injection.potency()));
    row.setStrength(injection.strength().map(said -> Double.toString(said)).orElse(""));
    row.setGrade((short) injection.grade().number());
    switch (injection.soft()) {
      case SoftAfter.Exactly exactly -> {
        row.setSoftAfter(EXACTLY);
        row.setSoftFromMilliseconds(exactly.duration().milliseconds());
      }
      case SoftAfter.AtLeast atLeast -> {
        row.setSoftAfter(AT_LEAST);
        row.setSoftFromMilliseconds(atLeast.duration().milliseconds());
      }
      case SoftAfter.Between between -> {
        row.setSoftAfter(BETWEEN);
        row.setSoftFromMilliseconds(between.from().milliseconds());
        row.setSoftBeforeMilliseconds(between.before().milliseconds());
      }
      case SoftAfter.NotKnown notKnown -> row.setSoftAfter(NOT_KNOWN);
    }
    injection
        .setting()
        .ifPresent(
            setting -> {
              row.setInjectedAt(setting.at());
              row.setPreparation(setting.preparation().value());
              row.setBarrel(setting.barrel());
            });
    return row;
  }

  @Override
  public int withdraw(String importId, Instant at, String reason) {
    List<String> entries =
        database
            .writing()
            .select(PAST_HISTORY.ENTRY_ID)
            .from(PAST_HISTORY)
            .join(ENTRY)
            .on(ENTRY.ID.eq(PAST_HISTORY.ENTRY_ID))
            .where(PAST_HISTORY.IMPORT_ID.eq(importId))
            .and(counts())
            .orderBy(ENTRY.SEQ)
            .fetch(PAST_HISTORY.ENTRY_ID);
    for (String entry : entries) {
      journal.append(
          NewEntry.of(WITHDRAWN, at, AccountId.PROGRAM.text()).correcting(entry, reason));
    }
    return entries.size();
  }
}
