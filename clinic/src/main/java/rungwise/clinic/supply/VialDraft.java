package rungwise.clinic.supply;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.Vial;
import rungwise.dosing.known.Component;
import rungwise.dosing.supply.Opening;

/**
 * The form of a vial as typed from its label, with the names of its fields as a fault gives them.
 *
 * @param strengths a number per mL by component, such as "30"; empty for what is not in it
 * @param made a date; may be empty
 * @param opened a date; may be empty
 * @param openedAt a time of day; may be empty
 * @param daysInUse a whole number; may be empty
 */
public record VialDraft(
    String lot,
    Map<Component, String> strengths,
    String made,
    String beyondUse,
    String opened,
    String openedAt,
    String daysInUse,
    String device) {

  public VialDraft {
    strengths = Map.copyOf(strengths);
  }

  public static final String LOT = "lot";

  /** All strengths together. */
  public static final String STRENGTHS = "strengths";

  public static final String MADE = "made";
  public static final String BEYOND_USE = "beyondUse";
  public static final String OPENED = "opened";
  public static final String OPENED_AT = "openedAt";
  public static final String DAYS_IN_USE = "daysInUse";
  public static final String DEVICE = "device";

  private static final String PER = " per mL";
  private static final String BETWEEN = ", ";

  /** The field of a component's strength. */
  public static String strengthOf(Component component) {
    return "strength-" + component.token();
  }

  /** A vial as it is written down, for an addendum to it. */
  public static VialDraft of(Vial vial) {
    return new VialDraft(
        vial.lot(),
        strengthsOf(vial.composition()),
        vial.dates().made().map(LocalDate::toString).orElse(""),
        vial.dates().beyondUse().toString(),
        vial.dates().opened().map(opening -> opening.day().toString()).orElse(""),
        vial.dates().opened().flatMap(Opening::clock).map(ClinicTime::clockText).orElse(""),
        vial.dates().daysInUse().map(days -> Integer.toString(days)).orElse(""),
        vial.device());
  }

  /** The numbers of a composition's words, without the commas that group their digits. */
  private static Map<Component, String> strengthsOf(String composition) {
    var strengths = new EnumMap<Component, String>(Component.class);
    String amounts = composition.substring(0, composition.length() - PER.length());
    for (String amount : amounts.split(BETWEEN, -1)) {
      Component component =
          Arrays.stream(Component.values())
              .filter(one -> amount.startsWith(one.fullName() + " "))
              .findFirst()
              .orElseThrow();
      String number =
          amount.substring(component.fullName().length(), amount.lastIndexOf(' ')).strip();
      strengths.put(component, number.replace(",", ""));
    }
    return strengths;
  }
}
