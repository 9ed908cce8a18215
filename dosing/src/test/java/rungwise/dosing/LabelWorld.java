package rungwise.dosing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import rungwise.dosing.history.Answer;
import rungwise.dosing.history.EmergencyReview;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.Reopening;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.Protocol;
import rungwise.dosing.known.ProtocolAmount;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** A man on the steps of the US label, for tests: 2.5, 5, then by 5 to 60 mcg. */
public final class LabelWorld {

  public static final Instant START = Instant.parse("2026-03-02T20:00:00Z");
  private static final Source HERE = new Source.Assumption("for a test");

  private Preparation preparation = SamplePreparations.ALPROSTADIL_20;
  private Barrel barrel = Barrels.U100_1;
  private AetiologyGroup group = AetiologyGroup.VASCULOGENIC;
  private Answer contraindication = Answer.NO;
  private Set<Readiness> readiness = EnumSet.allOf(Readiness.class);
  private Instant now = START.plusSeconds(60 * 60 * 24 * 60L);
  private final List<Injection> injections = new ArrayList<>();
  private final List<Reopening> reopenings = new ArrayList<>();
  private final List<EmergencyReview> reviews = new ArrayList<>();
  private long entry;

  public static Protocol protocol() {
    return new Protocol(
        "label",
        1,
        "Label",
        true,
        Set.of(Component.ALPROSTADIL),
        List.of(
            new Protocol.Start(
                EnumSet.of(
                    AetiologyGroup.VASCULOGENIC, AetiologyGroup.PSYCHOGENIC, AetiologyGroup.MIXED),
                mcg("2.5"),
                HERE),
            new Protocol.Start(
                EnumSet.of(
                    AetiologyGroup.SPINAL_CORD,
                    AetiologyGroup.POST_PROSTATECTOMY,
                    AetiologyGroup.UNKNOWN),
                mcg("1.25"),
                HERE)),
        List.of(
            new Protocol.Step(mcg("1.25"), mcg("1.25"), mcg("1.25"), HERE),
            new Protocol.Step(mcg("2.5"), mcg("2.5"), mcg("5"), HERE),
            new Protocol.Step(mcg("60"), mcg("5"), mcg("10"), HERE)),
        List.of(
            new Protocol.StrengthRule(Concentration.parse("40 mcg/mL").orThrow(), mcg("5"), HERE)),
        new Sourced<>(mcg("60"), HERE),
        new Protocol.Limits(
            new Sourced<>(TimeSpan.ofMinutes(60), HERE),
            new Sourced<>(TimeSpan.ofHours(24), HERE),
            new Sourced<>(3, HERE),
            new Sourced<>(3, HERE)));
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

  public LabelWorld contraindication(Answer answer) {
    contraindication = answer;
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
    entry++;
    injections.add(
        new Injection(entry, when, preparation.id(), drawn, ordered, grade, soft, causes));
    return this;
  }

  public LabelWorld reopened(String upTo) {
    entry++;
    reopenings.add(new Reopening(entry, preparation.id(), ml(upTo)));
    return this;
  }

  public LabelWorld reviewed() {
    entry++;
    reviews.add(new EmergencyReview(entry));
    return this;
  }

  public Ladder ladder() {
    return LadderProposal.of(protocol(), preparation, barrel, group).orThrow().ladder();
  }

  public Question question() {
    return new Question(
        group,
        contraindication,
        readiness,
        protocol(),
        ladder(),
        new History(injections, reopenings, reviews),
        now);
  }
}
