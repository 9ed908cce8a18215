package rungwise.quantities;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Finds ways of writing a dose that have been misread, often by a factor of ten.
 *
 * <p>The rules follow the Joint Commission "Do Not Use" list (U, IU, trailing zero, naked decimal
 * point, QD, QOD; cc, the micro sign and the signs for more and less from its further list) and the
 * ISMP list of error-prone abbreviations (point after a unit, number run together with its unit, no
 * comma from 1,000 on, IJ and other short forms of routes and times).
 */
public final class DoseTextLint {

  /** Unit words that can follow a number in a dose. */
  private static final String UNIT =
      "(?:mL|ml|L|mcg|ug|mg|g|kg|units?|mm|min|h|hours?|minutes?|days?|weeks?|months?|percent|%)";

  private static final String NUMBER = "[0-9](?:[0-9,]*[0-9])?(?:\\.[0-9]+)?";

  /** One way of writing that is refused. */
  private record Rule(Pattern pattern, String why) {
    Rule(String pattern, String why) {
      this(Pattern.compile(pattern), why);
    }
  }

  /** Wrong wherever it stands: in a dose as in a sentence. */
  private static final List<Rule> ANYWHERE =
      List.of(
          new Rule(
              NUMBER + "[ \\u00A0]?(?:U|u|IU|iu|i\\.u\\.|I\\.U\\.)(?![A-Za-z0-9-])",
              "\"U\" and \"IU\" are misread as 0, 4, IV or 10: write the word"),
          new Rule(
              "[0-9]\\.[0-9]*0(?=[ \\u00A0-]?" + UNIT + "(?![A-Za-z]))",
              "a zero at the end makes ten times as much when its point is missed: leave it out"),
          new Rule(
              "(?<![0-9A-Za-z_.)\\]])\\.[0-9]",
              "a point without a digit before it is missed: write a zero before it"),
          new Rule(
              "(?i)(?<![A-Za-z0-9.])[0-9.,]*[ \\u00A0]?(?<![A-Za-z])c\\.?c\\.?(?![A-Za-z])",
              "\"cc\" is misread as \"u\" or as zeros: write mL"),
          new Rule("[µμ](?:g|l|L)", "the micro sign is misread as m: write mcg or mL"),
          new Rule("(?<![A-Za-z])mc[Ll](?![A-Za-z])", "\"mcL\" is misread as mL: write mL"),
          new Rule(
              "(?i)(?<![A-Za-z.])(?:q\\.?[ ]?o\\.?[ ]?d|q\\.?[ ]?d)(?![A-Za-z])",
              "it is misread as \"four times a day\": write daily or every other day"));

  /** Wrong in the text of one dose; in a sentence or in code it can be right. */
  private static final List<Rule> IN_A_DOSE =
      List.of(
          new Rule(
              "(?<![A-Za-z])(?:mL|ml|mcg|mg|g|h|min)\\.(?=[ ]|$)",
              "a point after a unit is misread as 1: leave it out"),
          new Rule("[<>≤≥]", "it is misread as 7 or L, or turned round: write the words"),
          new Rule(
              "(?<![0-9,.])[0-9]+(?:\\.[0-9]+)?(?:mL|ml|mcg|mg|units?)(?![A-Za-z])",
              "the first letter of the unit is misread as zeros: leave a space before it"),
          new Rule(
              "(?<![0-9,.])[0-9]{4,}(?:\\.[0-9]+)?[ ]" + UNIT + "(?![A-Za-z])",
              "long numbers are miscounted: put a comma from 1,000 on"),
          new Rule(
              "(?<![A-Za-z])(?:IJ|IN|SC|SQ|HS|hs|OD|TIW|tiw|BIW|biw|[Ss]ub ?q)(?![A-Za-z])",
              "the short form is misread: write the words"),
          new Rule(
              "(?<![A-Za-z])(?:MS|MSO4|MgSO4)(?![A-Za-z])",
              "the short name stands for two drugs: write the name"));

  private DoseTextLint() {}

  /** Every fault of a text that states one dose and nothing else; empty if there is none. */
  public static List<String> faultsInDose(String text) {
    List<String> faults = faultsInProse(text);
    faults.addAll(faultsBy(IN_A_DOSE, text));
    return faults;
  }

  /** Every fault of running text, where a sentence may end with a unit; empty if there is none. */
  public static List<String> faultsInProse(String text) {
    return faultsBy(ANYWHERE, text);
  }

  private static List<String> faultsBy(List<Rule> rules, String text) {
    List<String> faults = new ArrayList<>();
    for (Rule rule : rules) {
      var found = rule.pattern().matcher(text);
      if (found.find()) {
        faults.add("\"" + found.group().strip() + "\" in \"" + text + "\": " + rule.why());
      }
    }
    return faults;
  }
}
