package rungwise.store.callbook;

import static rungwise.store.schema.Tables.CALL_PAGE_PRINTED;
import static rungwise.store.schema.Tables.CALL_PROTOCOL_SIGNED;
import static rungwise.store.schema.Tables.CALL_PROTOCOL_SIGNED_STEP;
import static rungwise.store.schema.Tables.DEPARTMENT_KEPT;
import static rungwise.store.schema.Tables.ENTRY;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Record;
import org.jooq.TableRecord;
import org.jooq.impl.DSL;
import rungwise.clinic.callbook.CallBook;
import rungwise.clinic.callbook.CallProtocol;
import rungwise.clinic.callbook.CallProtocol.Asks;
import rungwise.clinic.callbook.CallProtocol.Step;
import rungwise.clinic.callbook.Department;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.urgent.CallStep.Shown;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.CallPagePrintedRecord;
import rungwise.store.schema.tables.records.CallProtocolSignedRecord;
import rungwise.store.schema.tables.records.CallProtocolSignedStepRecord;
import rungwise.store.schema.tables.records.DepartmentKeptRecord;
import rungwise.store.words.Tokens;

/** What the clinic keeps for calls, as entries of no course. */
public final class SqlCallBook implements CallBook {

  private static final String SIGNED = "call_protocol_signed";
  private static final String KEPT = "department_kept";
  private static final String GONE = "department_gone";
  private static final String PRINTED = "call_page_printed";

  private final Database database;
  private final Journal journal;

  public SqlCallBook(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public List<Signed> signed() {
    Map<String, List<Step>> steps =
        database
            .reading()
            .selectFrom(CALL_PROTOCOL_SIGNED_STEP)
            .orderBy(CALL_PROTOCOL_SIGNED_STEP.ENTRY_ID, CALL_PROTOCOL_SIGNED_STEP.LINE)
            .fetchGroups(
                CALL_PROTOCOL_SIGNED_STEP.ENTRY_ID,
                row ->
                    new Step(
                        Tokens.read(Asks.class, row.getAsks()),
                        Tokens.read(Shown.class, row.getShown()),
                        row.getWords()));
    return database
        .reading()
        .select()
        .from(CALL_PROTOCOL_SIGNED)
        .crossJoin(ENTRY) // SQLite keeps its order; else it would walk over the whole journal
        .where(ENTRY.ID.eq(CALL_PROTOCOL_SIGNED.ENTRY_ID))
        .orderBy(ENTRY.SEQ.asc())
        .fetch(
            row ->
                signed(row, steps.getOrDefault(row.get(CALL_PROTOCOL_SIGNED.ENTRY_ID), List.of())));
  }

  private static Signed signed(Record row, List<Step> steps) {
    return new Signed(
        row.get(CALL_PROTOCOL_SIGNED.VERSION),
        new CallProtocol(
            steps,
            row.get(CALL_PROTOCOL_SIGNED.NIGHT_NUMBER),
            new RescueLimits(
                Mass.ofPicograms(row.get(CALL_PROTOCOL_SIGNED.IN_AN_HOUR_PICOGRAMS)),
                new TimeSpan(row.get(CALL_PROTOCOL_SIGNED.INTERVAL_MILLISECONDS)))),
        new AccountId(row.get(ENTRY.RECORDED_BY)),
        row.get(ENTRY.RECORDED_AT));
  }

  @Override
  public void sign(CallProtocol protocol, AccountId by, Instant at) {
    var rows = new ArrayList<TableRecord<?>>();
    var head = new CallProtocolSignedRecord();
    head.setVersion(signed().size() + 1);
    head.setNightNumber(protocol.number());
    head.setInAnHourPicograms(protocol.limits().inAnHour().picograms());
    head.setIntervalMilliseconds(protocol.limits().interval().milliseconds());
    rows.add(head);
    for (Step step : protocol.steps()) {
      var row = new CallProtocolSignedStepRecord();
      row.setLine(rows.size());
      row.setAsks(Tokens.of(step.asks()));
      row.setShown(Tokens.of(step.shown()));
      row.setWords(step.words());
      rows.add(row);
    }
    journal.append(NewEntry.of(SIGNED, at, by.text()), rows.toArray(TableRecord<?>[]::new));
  }

  @Override
  public List<Kept> departments() {
    Map<String, Kept> kept = new LinkedHashMap<>();
    database
        .reading()
        .select()
        .from(ENTRY)
        .leftJoin(DEPARTMENT_KEPT)
        .on(DEPARTMENT_KEPT.ENTRY_ID.eq(ENTRY.ID))
        .where(ENTRY.KIND.in(KEPT, GONE))
        .orderBy(ENTRY.SEQ)
        .forEach(row -> take(row, kept));
    return List.copyOf(kept.values());
  }

  private static void take(Record row, Map<String, Kept> kept) {
    Optional.ofNullable(row.get(ENTRY.CORRECTS)).ifPresent(kept::remove);
    if (row.get(ENTRY.KIND).equals(KEPT)) {
      DepartmentKeptRecord said = row.into(DEPARTMENT_KEPT);
      kept.put(
          row.get(ENTRY.ID),
          new Kept(
              new EntryId(row.get(ENTRY.ID)),
              new Department(
                  said.getName(),
                  said.getTown(),
                  said.getTelephone(),
                  said.getCan(),
                  said.getNote()),
              new AccountId(row.get(ENTRY.RECORDED_BY)),
              row.get(ENTRY.RECORDED_AT)));
    }
  }

  @Override
  public void keep(Department department, Optional<EntryId> instead, AccountId by, Instant at) {
    var row = new DepartmentKeptRecord();
    row.setName(department.name());
    row.setTown(department.town());
    row.setTelephone(department.telephone());
    row.setCan(department.can());
    row.setNote(department.note());
    NewEntry head = NewEntry.of(KEPT, at, by.text());
    journal.append(
        instead.map(entry -> head.correcting(entry.text(), "changed")).orElse(head), row);
  }

  @Override
  public void remove(EntryId entry, AccountId by, Instant at, String reason) {
    journal.append(NewEntry.of(GONE, at, by.text()).correcting(entry.text(), reason));
  }

  @Override
  public long edition() {
    return Optional.ofNullable(
            database
                .reading()
                .select(DSL.max(ENTRY.SEQ))
                .from(ENTRY)
                .where(ENTRY.KIND.in(SIGNED, KEPT, GONE))
                .fetchSingle()
                .value1())
        .orElse(0L);
  }

  @Override
  public List<Printed> printed() {
    return database
        .reading()
        .select()
        .from(CALL_PAGE_PRINTED)
        .crossJoin(ENTRY)
        .where(ENTRY.ID.eq(CALL_PAGE_PRINTED.ENTRY_ID))
        .orderBy(ENTRY.SEQ.asc())
        .fetch(
            row ->
                new Printed(
                    row.get(CALL_PAGE_PRINTED.EDITION),
                    new AccountId(row.get(ENTRY.RECORDED_BY)),
                    row.get(ENTRY.RECORDED_AT)));
  }

  @Override
  public void print(long edition, AccountId by, Instant at) {
    var row = new CallPagePrintedRecord();
    row.setEdition(edition);
    journal.append(NewEntry.of(PRINTED, at, by.text()), row);
  }
}
