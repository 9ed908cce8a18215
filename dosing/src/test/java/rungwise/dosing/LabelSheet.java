package rungwise.dosing;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.protocol.ProtocolOptions;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;

/** A protocol for tests, written step by step; it begins as the US label. */
public final class LabelSheet {

  private static final Source HERE = new Source.Assumption("for a test");

  private List<Protocol.Start> starts =
      List.of(
          new Protocol.Start(
              EnumSet.of(
                  AetiologyGroup.VASCULOGENIC, AetiologyGroup.PSYCHOGENIC, AetiologyGroup.MIXED),
              LabelWorld.mcg("2.5"),
              HERE),
          new Protocol.Start(
              EnumSet.of(
                  AetiologyGroup.SPINAL_CORD,
                  AetiologyGroup.POST_PROSTATECTOMY,
                  AetiologyGroup.UNKNOWN),
              LabelWorld.mcg("1.25"),
              HERE));
  private List<Protocol.Step> steps =
      List.of(
          new Protocol.Step(
              LabelWorld.mcg("1.25"), LabelWorld.mcg("1.25"), LabelWorld.mcg("1.25"), HERE),
          new Protocol.Step(
              LabelWorld.mcg("2.5"), LabelWorld.mcg("2.5"), LabelWorld.mcg("5"), HERE),
          new Protocol.Step(LabelWorld.mcg("60"), LabelWorld.mcg("5"), LabelWorld.mcg("10"), HERE));
  private Set<Component> components = Set.of(Component.ALPROSTADIL);
  private List<Protocol.StrengthRule> strengths =
      List.of(
          new Protocol.StrengthRule(
              Concentration.parse("40 mcg/mL").orThrow(), LabelWorld.mcg("5"), HERE));
  private ProtocolAmount ceiling = LabelWorld.mcg("60");
  private Optional<Sourced<ProtocolAmount>> careAbove = Optional.empty();
  private Optional<Protocol.SameVisit> sameVisit =
      Optional.of(
          new Protocol.SameVisit(
              TimeSpan.ofMinutes(60), true, Optional.of(LabelWorld.mcg("2.5")), HERE));
  private List<Protocol.ComponentLimit> componentLimits = List.of();
  private Optional<Protocol.AfterPartial> afterPartial = Optional.empty();
  private int spacingHours = 24;

  private LabelSheet() {}

  public static LabelSheet label() {
    return new LabelSheet();
  }

  /** In volumes, from 0.05 mL by 0.05 to 0.5 mL, without a second dose in one visit. */
  public static LabelSheet byVolume(Set<Component> components) {
    var sheet = new LabelSheet();
    ProtocolAmount step = new ProtocolAmount.OfVolume(LabelWorld.ml("0.05"));
    sheet.components = components;
    sheet.ceiling = new ProtocolAmount.OfVolume(LabelWorld.ml("0.5"));
    sheet.starts = List.of(new Protocol.Start(Set.of(AetiologyGroup.values()), step, HERE));
    sheet.steps = List.of(new Protocol.Step(sheet.ceiling, step, step, HERE));
    sheet.strengths = List.of();
    sheet.sameVisit = Optional.empty();
    return sheet;
  }

  /** Every group starts at that many micrograms. */
  public LabelSheet startingAt(String micrograms) {
    starts =
        List.of(
            new Protocol.Start(Set.of(AetiologyGroup.values()), LabelWorld.mcg(micrograms), HERE));
    return this;
  }

  public LabelSheet careAbove(String micrograms) {
    careAbove = Optional.of(new Sourced<>(LabelWorld.mcg(micrograms), HERE));
    return this;
  }

  public LabelSheet componentLimit(Component component, String micrograms) {
    componentLimits =
        List.of(
            new Protocol.ComponentLimit(
                component, Mass.parseMicrograms(micrograms).orThrow(), HERE));
    return this;
  }

  public LabelSheet spacing(int hours) {
    spacingHours = hours;
    return this;
  }

  /** A step up after so many partial responses in a row at one dose. */
  public LabelSheet stepAfterPartials(int responses) {
    afterPartial = Optional.of(new Protocol.AfterPartial(responses, HERE));
    return this;
  }

  public LabelSheet withoutSecondDose() {
    sameVisit = Optional.empty();
    return this;
  }

  public LabelSheet secondDose(UnaryOperator<Protocol.SameVisit> change) {
    sameVisit = sameVisit.map(change);
    return this;
  }

  public Protocol protocol() {
    return new Protocol(
        "label",
        1,
        "Label",
        true,
        components,
        starts,
        steps,
        strengths,
        new Sourced<>(ceiling, HERE),
        Protocol.Limits.of(
            HERE,
            Map.of(
                CountedOption.SATISFACTORY_MINUTES, 60,
                CountedOption.SPACING_HOURS, spacingHours,
                CountedOption.IN_SEVEN_DAYS, 3,
                CountedOption.REVIEW_MONTHS, 3,
                CountedOption.SCREENING_MONTHS, 12,
                CountedOption.FRESH_DAYS, 30,
                CountedOption.PDE5_HOURS, 72)),
        ProtocolOptions.NONE
            .withCareAbove(careAbove)
            .withSameVisit(sameVisit)
            .withComponentLimits(componentLimits)
            .withAfterPartial(afterPartial));
  }
}
