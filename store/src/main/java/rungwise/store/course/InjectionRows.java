package rungwise.store.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jooq.TableRecord;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.course.Cause;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.Moment;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Spot;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.screening.Answer;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.schema.tables.records.HandedOverRecord;
import rungwise.store.schema.tables.records.InjectionNotOrderedRecord;
import rungwise.store.schema.tables.records.InjectionReportedCauseRecord;
import rungwise.store.schema.tables.records.InjectionReportedRecord;
import rungwise.store.schema.tables.records.ObservationNotedRecord;
import rungwise.store.schema.tables.records.ObservationStartedRecord;
import rungwise.store.words.Tokens;

/** Injections and what was seen of them, as rows and back. */
final class InjectionRows {

  /** How well it is known when an injection's effect was over. */
  enum SoftKind {
    EXACTLY,
    AT_LEAST,
    BETWEEN,
    NOT_KNOWN
  }

  private InjectionRows() {}

  static List<TableRecord<?>> rows(CourseFact.InjectionReported reported) {
    var rows = new ArrayList<TableRecord<?>>();
    rows.add(row(reported));
    int line = 0;
    for (Cause cause : reported.details().causes()) {
      line++;
      var row = new InjectionReportedCauseRecord();
      row.setLine(line);
      row.setCause(Tokens.of(cause));
      rows.add(row);
    }
    rows.addAll(notOrdered(reported.ordered()));
    return rows;
  }

  static List<TableRecord<?>> rows(CourseFact.ObservationStarted started) {
    var rows = new ArrayList<TableRecord<?>>();
    rows.add(row(started));
    rows.addAll(notOrdered(started.ordered()));
    return rows;
  }

  private static List<TableRecord<?>> notOrdered(Optional<Volume> ordered) {
    return ordered.isPresent() ? List.of() : List.of(new InjectionNotOrderedRecord());
  }

  static HandedOverRecord row(CourseFact.HandedOver handed) {
    var row = new HandedOverRecord();
    row.setErection(handed.erection().text());
    row.setToAccount(handed.to().text());
    row.setTries((short) handed.tries());
    row.setLastTry(handed.lastTry());
    return row;
  }

  static CourseFact handed(HandedOverRecord row) {
    return new CourseFact.HandedOver(
        new EntryId(row.getErection()),
        new AccountId(row.getToAccount()),
        row.getTries(),
        row.getLastTry());
  }

  private static InjectionReportedRecord row(CourseFact.InjectionReported reported) {
    var row = new InjectionReportedRecord();
    row.setInjectedAt(reported.injectedAt());
    row.setPreparation(reported.preparation().value());
    row.setBarrel(reported.barrel());
    row.setDrawnMicrolitres(reported.drawn().microlitres());
    row.setOrderedMicrolitres(reported.ordered().orElse(reported.drawn()).microlitres());
    row.setGrade((short) reported.grade().number());
    row.setSimpleCauses(Tokens.of(reported.causes()));
    row.setPlace(Tokens.of(reported.place()));
    row.setObservation(reported.observation().map(EntryId::text).orElse(null));
    details(row, reported.details());
    switch (reported.soft()) {
      case SoftAfter.Exactly exactly ->
          soft(row, SoftKind.EXACTLY, Optional.of(exactly.duration()), Optional.empty());
      case SoftAfter.AtLeast atLeast ->
          soft(row, SoftKind.AT_LEAST, Optional.of(atLeast.duration()), Optional.empty());
      case SoftAfter.Between between ->
          soft(row, SoftKind.BETWEEN, Optional.of(between.from()), Optional.of(between.before()));
      case SoftAfter.NotKnown notKnown ->
          soft(row, SoftKind.NOT_KNOWN, Optional.empty(), Optional.empty());
    }
    return row;
  }

  private static void soft(
      InjectionReportedRecord row,
      SoftKind kind,
      Optional<TimeSpan> from,
      Optional<TimeSpan> before) {
    row.setSoftAfter(Tokens.of(kind));
    row.setSoftFromMilliseconds(from.map(TimeSpan::milliseconds).orElse(null));
    row.setSoftBeforeMilliseconds(before.map(TimeSpan::milliseconds).orElse(null));
  }

  private static void details(InjectionReportedRecord row, InjectionDetails details) {
    row.setOnsetMilliseconds(details.onset().map(TimeSpan::milliseconds).orElse(null));
    row.setUsableMilliseconds(details.usable().map(TimeSpan::milliseconds).orElse(null));
    row.setSide(details.spot().map(spot -> Tokens.of(spot.side())).orElse(null));
    row.setClockHour(details.spot().map(spot -> (short) spot.hour()).orElse(null));
    row.setPain(details.pain().map(Integer::shortValue).orElse(null));
    row.setBruise(Tokens.of(details.bruise()));
    row.setAroused(Tokens.of(details.aroused()));
    row.setVial(details.vial().map(EntryId::text).orElse(null));
    row.setOtherTablets(details.otherTablets());
    row.setSecondDose(Tokens.of(details.secondDose()));
  }

  private static Optional<Volume> ordered(long microlitres, boolean isOrdered) {
    return isOrdered ? Optional.of(Volume.ofMicrolitres(microlitres)) : Optional.empty();
  }

  static CourseFact reported(InjectionReportedRecord row, boolean isOrdered, List<String> causes) {
    return new CourseFact.InjectionReported(
        row.getInjectedAt(),
        new PreparationId(row.getPreparation()),
        row.getBarrel(),
        Volume.ofMicrolitres(row.getDrawnMicrolitres()),
        ordered(row.getOrderedMicrolitres(), isOrdered),
        Grade.of(row.getGrade()).orElseThrow(),
        soft(row),
        Tokens.read(SimpleCauses.class, row.getSimpleCauses()),
        Tokens.read(Place.class, row.getPlace()),
        Optional.ofNullable(row.getObservation()).map(EntryId::new),
        details(row, causes));
  }

  private static SoftAfter soft(InjectionReportedRecord row) {
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

  private static InjectionDetails details(InjectionReportedRecord row, List<String> causes) {
    Set<Cause> wrong =
        causes.stream().map(cause -> Tokens.read(Cause.class, cause)).collect(Collectors.toSet());
    return new InjectionDetails(
        Optional.ofNullable(row.getOnsetMilliseconds()).map(TimeSpan::new),
        Optional.ofNullable(row.getUsableMilliseconds()).map(TimeSpan::new),
        spot(row.getSide(), row.getClockHour()),
        Optional.ofNullable(row.getPain()).map(Short::intValue),
        Tokens.read(Answer.class, row.getBruise()),
        Tokens.read(Answer.class, row.getAroused()),
        wrong,
        Optional.ofNullable(row.getVial()).map(EntryId::new),
        row.getOtherTablets(),
        Tokens.read(Answer.class, row.getSecondDose()));
  }

  private static Optional<Spot> spot(@Nullable String side, @Nullable Short hour) {
    return side == null || hour == null
        ? Optional.empty()
        : Optional.of(new Spot(Tokens.read(Spot.Side.class, side), hour));
  }

  private static ObservationStartedRecord row(CourseFact.ObservationStarted started) {
    var row = new ObservationStartedRecord();
    row.setInjectedAt(started.injectedAt());
    row.setPreparation(started.preparation().value());
    row.setBarrel(started.barrel());
    row.setDrawnMicrolitres(started.drawn().microlitres());
    row.setOrderedMicrolitres(started.ordered().orElse(started.drawn()).microlitres());
    row.setSide(started.spot().map(spot -> Tokens.of(spot.side())).orElse(null));
    row.setClockHour(started.spot().map(spot -> (short) spot.hour()).orElse(null));
    row.setSystolic(started.before().map(vitals -> (short) vitals.systolic()).orElse(null));
    row.setDiastolic(started.before().map(vitals -> (short) vitals.diastolic()).orElse(null));
    row.setPulse(started.before().map(vitals -> (short) vitals.pulse()).orElse(null));
    row.setVial(started.vial().map(EntryId::text).orElse(null));
    return row;
  }

  static CourseFact started(ObservationStartedRecord row, boolean isOrdered) {
    return new CourseFact.ObservationStarted(
        row.getInjectedAt(),
        new PreparationId(row.getPreparation()),
        row.getBarrel(),
        Volume.ofMicrolitres(row.getDrawnMicrolitres()),
        ordered(row.getOrderedMicrolitres(), isOrdered),
        spot(row.getSide(), row.getClockHour()),
        vitals(row.getSystolic(), row.getDiastolic(), row.getPulse()),
        Optional.ofNullable(row.getVial()).map(EntryId::new));
  }

  private static Optional<Vitals> vitals(
      @Nullable Short systolic, @Nullable Short diastolic, @Nullable Short pulse) {
    return systolic == null || diastolic == null || pulse == null
        ? Optional.empty()
        : Optional.of(new Vitals(systolic, diastolic, pulse));
  }

  static ObservationNotedRecord row(CourseFact.ObservationNoted noted) {
    var row = new ObservationNotedRecord();
    row.setObservation(noted.observation().text());
    row.setMoment(Tokens.of(noted.moment()));
    row.setSeenAt(noted.at());
    row.setGrade(noted.grade().map(grade -> (short) grade.number()).orElse(null));
    row.setSystolic(noted.vitals().map(vitals -> (short) vitals.systolic()).orElse(null));
    row.setDiastolic(noted.vitals().map(vitals -> (short) vitals.diastolic()).orElse(null));
    row.setPulse(noted.vitals().map(vitals -> (short) vitals.pulse()).orElse(null));
    return row;
  }

  static CourseFact noted(ObservationNotedRecord row) {
    return new CourseFact.ObservationNoted(
        new EntryId(row.getObservation()),
        Tokens.read(Moment.class, row.getMoment()),
        row.getSeenAt(),
        Optional.ofNullable(row.getGrade()).flatMap(grade -> Grade.of(grade)),
        vitals(row.getSystolic(), row.getDiastolic(), row.getPulse()));
  }
}
