package rungwise.web.urgent;

import java.util.Arrays;
import java.util.List;
import rungwise.dosing.urgent.Risk;
import rungwise.dosing.urgent.rescue.Gas;
import rungwise.dosing.urgent.rescue.Mixing;
import rungwise.dosing.urgent.rescue.PublishedScheme;
import rungwise.dosing.urgent.rescue.RescueDrug;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.RescueSyringes;
import rungwise.quantities.MassUnit;

/** What is published about a rescue, in words; it is the same for everybody. */
public final class RescueFacts {

  /** One published scheme, in words. */
  public record SchemeRow(
      String text, String dose, String every, String inAnHour, String tried, String source) {}

  private static final String NOT_SAID = "not said in the text that was seen";

  private RescueFacts() {}

  /** The drug with class and purpose, and the one that its name looks like. */
  public static String drug() {
    return RescueDrug.PHENYLEPHRINE.words();
  }

  public static String lookAlike() {
    return RescueDrug.PHENTOLAMINE.words();
  }

  /** Where class and purpose come from. */
  public static String drugSource() {
    return RescueDrug.PHENYLEPHRINE.source().words();
  }

  public static List<SchemeRow> schemes() {
    return Arrays.stream(PublishedScheme.values()).map(RescueFacts::row).toList();
  }

  private static SchemeRow row(PublishedScheme scheme) {
    String least = scheme.least().in(MassUnit.MICROGRAM);
    String most = scheme.most().in(MassUnit.MICROGRAM);
    return new SchemeRow(
        scheme.words(),
        least.equals(most) ? least : least + " to " + most,
        scheme.soonest() + " to " + scheme.latest(),
        scheme.inAnHour().map(sum -> "at most " + sum.in(MassUnit.MICROGRAM)).orElse(NOT_SAID),
        scheme.tried().map(span -> "up to " + span).orElse(NOT_SAID),
        scheme.source().words());
  }

  public static List<Risk> risks() {
    return List.of(Risk.values());
  }

  /** How a blood gas is read. */
  public static List<String> gasLimits() {
    return List.of(
        "Ischaemic: pO2 below "
            + Gas.ISCHAEMIC_OXYGEN.value()
            + ", pCO2 above "
            + Gas.ISCHAEMIC_CARBON_DIOXIDE.value()
            + " and pH below "
            + Gas.ISCHAEMIC_PH.value()
            + ", all three.",
        "Non-ischaemic: pO2 above "
            + Gas.ARTERIAL_OXYGEN.value()
            + ", pCO2 below "
            + Gas.ARTERIAL_CARBON_DIOXIDE.value()
            + " and pH from "
            + Gas.ARTERIAL_PH_FROM.value()
            + " to "
            + Gas.ARTERIAL_PH_TO.value()
            + ", all three.");
  }

  /** "3 min": what lies at least between two doses. */
  public static String between() {
    return RescueLimits.FLOOR.value().toString();
  }

  /** "100 mcg/mL to 500 mcg/mL": what is given. */
  public static String strengths() {
    return Mixing.LEAST_GIVEN.value().in(MassUnit.MICROGRAM)
        + " to "
        + Mixing.MOST_GIVEN.value().in(MassUnit.MICROGRAM);
  }

  public static String most() {
    return Mixing.MOST_GIVEN.value().in(MassUnit.MICROGRAM);
  }

  /** Where the limits of the blood gas come from. */
  public static String gasSource() {
    return Gas.ISCHAEMIC_PH.source().words();
  }

  public static String gasPhSource() {
    return Gas.ARTERIAL_PH_FROM.source().words();
  }

  public static String strengthSource() {
    return Mixing.MOST_GIVEN.source().words();
  }

  public static String stockSource() {
    return Mixing.USUAL_STOCK.source().words();
  }

  public static String syringeSource() {
    return RescueSyringes.SOURCE.words();
  }
}
