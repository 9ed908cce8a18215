package rungwise.store.words;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.coded.HandedOnFor;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.clinic.course.CourseFact.CallWritten.Word;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.urgent.CallStep;
import rungwise.dosing.urgent.Speaker;
import rungwise.store.schema.tables.records.CallWrittenRecord;

/** What was written in calls, as rows and back. */
public final class CallRows {

  /** What a row says. */
  private enum Kind {
    OPENED,
    BEGAN,
    STRUCK,
    FIRM,
    DONE,
    HANDED_ON,
    SOFT,
    HANDED_TO
  }

  private CallRows() {}

  public static CallWrittenRecord row(Word word) {
    return switch (word) {
      case CallWritten.Opened opened -> row(Kind.OPENED);
      case CallWritten.Began began ->
          said(Kind.BEGAN, began.call(), began.by(), began.at().orElse(null));
      case CallWritten.Struck struck -> {
        CallWrittenRecord row = of(Kind.STRUCK, struck.call());
        row.setStruck(struck.began().text());
        yield row;
      }
      case CallWritten.Firm firm -> said(Kind.FIRM, firm.call(), firm.by(), firm.at());
      case CallWritten.Done done -> {
        CallWrittenRecord row = said(Kind.DONE, done.call(), done.by(), done.at());
        row.setStep(Tokens.of(done.step()));
        yield row;
      }
      case CallWritten.HandedOn on -> {
        CallWrittenRecord row = of(Kind.HANDED_ON, on.call());
        row.setToAccount(on.to().text());
        row.setWhy(Tokens.of(on.why()));
        yield row;
      }
      case CallWritten.Soft soft -> said(Kind.SOFT, soft.call(), soft.by(), soft.at());
      case CallWritten.HandedTo to -> row(to);
    };
  }

  private static CallWrittenRecord row(CallWritten.HandedTo to) {
    CallWrittenRecord row = of(Kind.HANDED_TO, to.call());
    row.setAtInstant(to.at());
    row.setPlace(to.place());
    row.setWhom(to.whom());
    return row;
  }

  private static CallWrittenRecord row(Kind kind) {
    var row = new CallWrittenRecord();
    row.setWord(Tokens.of(kind));
    return row;
  }

  private static CallWrittenRecord of(Kind kind, EntryId call) {
    CallWrittenRecord row = row(kind);
    row.setCallEntry(call.text());
    return row;
  }

  private static CallWrittenRecord said(Kind kind, EntryId call, Speaker by, @Nullable Instant at) {
    CallWrittenRecord row = of(kind, call);
    row.setSpeaker(Tokens.of(by));
    row.setAtInstant(at);
    return row;
  }

  public static Word word(CallWrittenRecord row) {
    Kind kind = Tokens.read(Kind.class, row.getWord());
    return kind == Kind.OPENED
        ? new CallWritten.Opened()
        : word(kind, new EntryId(row.getCallEntry()), row);
  }

  private static Word word(Kind kind, EntryId call, CallWrittenRecord row) {
    return switch (kind) {
      case OPENED -> throw new IllegalStateException("bug: a call that opens in a call");
      case BEGAN ->
          new CallWritten.Began(call, Optional.ofNullable(row.getAtInstant()), speaker(row));
      case STRUCK -> new CallWritten.Struck(call, new EntryId(row.getStruck()));
      case FIRM -> new CallWritten.Firm(call, row.getAtInstant(), speaker(row));
      case DONE ->
          new CallWritten.Done(
              call, Tokens.read(CallStep.class, row.getStep()), row.getAtInstant(), speaker(row));
      case HANDED_ON ->
          new CallWritten.HandedOn(
              call,
              new AccountId(row.getToAccount()),
              Tokens.read(HandedOnFor.class, row.getWhy()));
      case SOFT -> new CallWritten.Soft(call, row.getAtInstant(), speaker(row));
      case HANDED_TO ->
          new CallWritten.HandedTo(call, row.getPlace(), row.getWhom(), row.getAtInstant());
    };
  }

  private static Speaker speaker(CallWrittenRecord row) {
    return Tokens.read(Speaker.class, row.getSpeaker());
  }
}
