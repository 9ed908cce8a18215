package rungwise.dosing;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.dosing.history.Acceptance;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Circumstances.LastTablet;
import rungwise.dosing.history.EmergencyReview;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Injection.Setting;
import rungwise.dosing.history.Observing;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.Reopening;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.history.Struck;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.supply.Freshness;
import rungwise.dosing.supply.VialEnd;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** A man on the steps of the US label, for tests: 2.5, 5, then by 5 to 60 mcg. */
public final class LabelWorld {

  public static final Instant START = Instant.parse("2026-03-02T20:00:00Z");
  public static final Stock FRESH = new Stock("first vial", Freshness.FRESH);
  public static final String ALPROSTADIL_20_LABEL = SamplePreparations.ALPROSTADIL_20.composition();

  /** Half as strong as the sample that these tests begin with. */
  public static final Preparation ALPROSTADIL_10 =
      new Preparation(
          new PreparationId("alprostadil-10"),
          "Alprostadil 10",
          new Form.Solution(),
          List.of(
              new Ingredient(
                  Component.ALPROSTADIL,
                  Concentration.parse("10 mcg/mL").orThrow(),
                  Optional.empty())),
          ml("1"),
          Optional.empty());

  private Preparation preparation = SamplePreparations.ALPROSTADIL_20;
  private Barrel barrel = Barrels.U100_1;
  private AetiologyGroup group = AetiologyGroup.VASCULOGENIC;
  private Screening screening = Screening.all(Answer.NO, START);
  private Protocol protocol = protocol();
  private Optional<VialInHand> vial = Optional.of(vial(FRESH, ALPROSTADIL_20_LABEL));
  private Setting setting = Setting.CLINIC_OBSERVED;
  private Stock stock = FRESH;
  private Set<Readiness> readiness = EnumSet.allOf(Readiness.class);
  private Instant now = START.plusSeconds(60 * 60 * 24 * 60L);
  private final List<Injection> injections = new ArrayList<>();
  private final List<Reopening> reopenings = new ArrayList<>();
  private final List<EmergencyReview> reviews = new ArrayList<>();
  private final List<Struck> struck = new ArrayList<>();
  private final List<Acceptance> acceptances = new ArrayList<>();
  private final List<Observing> observing = new ArrayList<>();
  private Before before = Before.NOTHING;
  private Circumstances circumstances = Circumstances.NONE;
  private boolean isExaminedNow = true;
  private long entry;

  public static Protocol protocol() {
    return LabelSheet.label().protocol();
  }

  /** A vial that is usable for years. */
  public static VialInHand vial(Stock stock, String composition) {
    return new VialInHand(
        stock,
        new VialInHand.Label(composition),
        VialEnd.byLabel(START.plus(Duration.ofDays(3650))));
  }

  public static ProtocolAmount mcg(String number) {
    return new ProtocolAmount.Content(
        Component.ALPROSTADIL, Mass.parseMicrograms(number).orThrow());
  }

  public static Volume ml(String number) {
    return Volume.parseMillilitres(number).orThrow();
  }

  public static SoftAfter minutes(long minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  public LabelWorld with(Preparation other) {
    preparation = other;
    return this;
  }

  public LabelWorld on(Barrel other) {
    barrel = other;
    return this;
  }

  public LabelWorld group(AetiologyGroup other) {
    group = other;
    return this;
  }

  public LabelWorld screened(Condition condition, Answer answer) {
    screening = screening.with(condition, answer, START);
    return this;
  }

  public LabelWorld screened(Screening other) {
    screening = other;
    return this;
  }

  public LabelWorld by(Protocol other) {
    protocol = other;
    return this;
  }

  /** He was injected with another preparation before, and it was over in time. */
  public LabelWorld after(Preparation before, String tolerated) {
    return injectedWith(before, tolerated, minutes(20));
  }

  /** An injection of another preparation, two days after the one before. */
  public LabelWorld injectedWith(Preparation other, String volume, SoftAfter soft) {
    Preparation mine = preparation;
    preparation = other;
    injected(volume, Grade.FULLER, soft);
    preparation = mine;
    return this;
  }

  public LabelWorld holding(VialInHand other) {
    vial = Optional.of(other);
    return this;
  }

  /** What stands around the dose. */
  public LabelWorld around(Circumstances other) {
    circumstances = other;
    return this;
  }

  /** He was examined then; unless it is said, on the day of the question. */
  public LabelWorld examined(Optional<Instant> at) {
    isExaminedNow = false;
    return around(at.map(circumstances::withExamined).orElse(circumstances));
  }

  /** He took a tablet for erections at that instant. */
  public LabelWorld tookTablet(Instant at) {
    entry++;
    return around(circumstances.withTablet(new LastTablet(at, Long.toString(entry))));
  }

  public LabelWorld withoutVial() {
    vial = Optional.empty();
    return this;
  }

  /** Where the injections that follow are given. */
  public LabelWorld at(Place other) {
    setting = Setting.of(other, other == Place.CLINIC);
    return this;
  }

  /** The injections after this were in the clinic, as somebody said: nobody there saw them. */
  public LabelWorld toldOfTheClinic() {
    setting = Setting.CLINIC_AS_TOLD;
    return this;
  }

  /** The injections after this were watched in the clinic and said later to have been at home. */
  public LabelWorld watchedAndSaidAtHome() {
    setting = Setting.of(Place.HOME, /* isObserved= */ true);
    return this;
  }

  /** From which stock the injections that follow are drawn. */
  public LabelWorld from(Stock other) {
    stock = other;
    return this;
  }

  public LabelWorld observing(Instant since, String drawn) {
    entry++;
    observing.add(new Observing(entry, since, ml(drawn)));
    return this;
  }

  /** The last report is withdrawn. */
  public LabelWorld struck() {
    entry++;
    struck.add(new Struck(injections.removeLast(), entry, Optional.empty()));
    return this;
  }

  /** The last report is corrected: this is said of the same injection now. */
  public LabelWorld corrected(String drawn, Grade grade, SoftAfter soft) {
    Injection said = injections.removeLast();
    add(said.at(), ml(drawn), said.ordered(), grade, soft, said.causes());
    struck.add(new Struck(said, entry, Optional.of(injections.getLast())));
    return this;
  }

  public LabelWorld ready(Set<Readiness> items) {
    readiness = items;
    return this;
  }

  public LabelWorld at(Instant instant) {
    now = instant;
    return this;
  }

  /** Two days after the one before, as ordered, with the simple causes asked about. */
  public LabelWorld injected(String volume, Grade grade, SoftAfter soft) {
    return injected(volume, volume, grade, soft, SimpleCauses.NONE_FOUND);
  }

  public LabelWorld injected(
      String drawn, String ordered, Grade grade, SoftAfter soft, SimpleCauses causes) {
    Instant when = START.plusSeconds(60 * 60 * 48L * injections.size());
    return injectedAt(when, ml(drawn), ml(ordered), grade, soft, causes);
  }

  public LabelWorld injectedAt(
      Instant when,
      Volume drawn,
      Volume ordered,
      Grade grade,
      SoftAfter soft,
      SimpleCauses causes) {
    return add(when, drawn, Optional.of(ordered), grade, soft, causes);
  }

  /** The same of a dose that nobody had signed. */
  public LabelWorld unordered(String drawn, Grade grade, SoftAfter soft) {
    Instant when = START.plusSeconds(60 * 60 * 48L * injections.size());
    return add(when, ml(drawn), Optional.empty(), grade, soft, SimpleCauses.NONE_FOUND);
  }

  private LabelWorld add(
      Instant when,
      Volume drawn,
      Optional<Volume> ordered,
      Grade grade,
      SoftAfter soft,
      SimpleCauses causes) {
    entry++;
    injections.add(
        new Injection(
            entry, when, preparation, drawn, ordered, grade, soft, causes, setting, stock));
    return this;
  }

  public LabelWorld reopened(String upTo) {
    entry++;
    reopenings.add(new Reopening(entry, preparation.id(), ml(upTo)));
    return this;
  }

  /** He was injected before the record began, and nobody has asked when. */
  public LabelWorld withOpenPast() {
    before = new Before(before.undated(), before.unmapped(), List.of(), /* isOpen= */ true);
    return this;
  }

  /** A prescriber signed a dose and accepted that it may last so long. */
  public LabelWorld accepted(String volume, int minutes) {
    entry++;
    acceptances.add(new Acceptance(entry, preparation, ml(volume), TimeSpan.ofMinutes(minutes)));
    return this;
  }

  public LabelWorld reviewed() {
    return reviewed(Optional.empty());
  }

  /** A prescriber has reviewed it; he may have written when he was seen to be soft. */
  public LabelWorld reviewed(Optional<Instant> softWhenSeen) {
    entry++;
    reviews.add(new EmergencyReview(entry, softWhenSeen));
    return this;
  }

  /** A history from before says this of a dose of the preparation, and not when it was. */
  public LabelWorld undated(String volume, Grade grade, SoftAfter soft) {
    entry++;
    var one =
        new Injection(
            entry,
            now,
            preparation,
            ml(volume),
            Optional.empty(),
            grade,
            soft,
            SimpleCauses.NOT_ASKED,
            Setting.HOME,
            Stock.NOT_RECORDED);
    var all = Stream.concat(before.undated().stream(), Stream.of(one)).toList();
    before = new Before(all, before.unmapped(), List.of(), before.isOpen());
    return this;
  }

  /** He is taken over: this was told of a dose of the preparation elsewhere, a day before. */
  public LabelWorld takenOver(String volume, Grade grade, SoftAfter soft, int percent) {
    entry++;
    Instant at = START.plusSeconds(60 * 60 * (48L * injections.size() - 24));
    before = ToldDose.added(before, entry, at, preparation, ml(volume), grade, soft, percent);
    return this;
  }

  /** A prescriber opens the schedule of the preparation up to a volume. */
  public LabelWorld openedAsTold(String upTo) {
    entry++;
    var opened = Optional.of(new Before.Opened(preparation, ml(upTo)));
    before =
        before.with(
            new Before.Elsewhere(before.elsewhere().takenOver(), opened), /* isOpenThere= */ false);
    return this;
  }

  /** A history from before says this of a dose of nobody knows what. */
  public LabelWorld unmapped(String volume, Grade grade, SoftAfter soft) {
    var one = new Before.Unmapped(ml(volume), grade, soft);
    before = new Before(before.undated(), List.of(one), List.of(), before.isOpen());
    return this;
  }

  /** A protocol in volumes that names no composition is for that of the preparation. */
  private Protocol ruled() {
    return protocol.isInVolumes() && protocol.composition().isEmpty()
        ? protocol.asWrittenFor(preparation)
        : protocol;
  }

  private History history() {
    return new History(
        injections, List.of(), struck, observing, reopenings, reviews, acceptances, before);
  }

  public Ladder ladder() {
    return LadderProposal.of(ruled(), preparation, barrel, group, history().beginning(preparation))
        .orThrow()
        .ladder();
  }

  public Question question() {
    return question(ladder());
  }

  /** The same question about another ladder. */
  public Question question(Ladder ladder) {
    Circumstances around = isExaminedNow ? circumstances.withExamined(now) : circumstances;
    return new Question(group, screening, readiness, ruled(), ladder, history(), vial, around, now);
  }
}
