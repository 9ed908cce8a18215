package rungwise.drawing;

import java.util.List;
import rungwise.quantities.Volume;

/**
 * How a reader finds a line on a syringe of which only some lines are numbered: "the line marked
 * 20", or "two small lines past the 10". Lines are counted away from the needle.
 */
public final class MarkWords {

  private MarkWords() {}

  /** The words of one language. A count of lines is given in words up to nine, then in digits. */
  public interface Phrases {

    /** The words for counts from two on. */
    List<String> counts();

    /** The line itself carries the number: "the line marked 20". */
    String at(String number);

    /** "one small line past the 10". */
    String onePast(String number);

    /** "two small lines past the 10". */
    String past(String count, String number);

    /** The same from the zero line on, which carries no number. */
    String onePastZero();

    /** "two small lines past the zero line". */
    String pastZero(String count);
  }

  /** What the pages say. */
  private enum English implements Phrases {
    WORDS;

    @Override
    public List<String> counts() {
      return List.of("two", "three", "four", "five", "six", "seven", "eight", "nine");
    }

    @Override
    public String at(String number) {
      return "the line marked " + number;
    }

    @Override
    public String onePast(String number) {
      return "one small line past the " + number;
    }

    @Override
    public String past(String count, String number) {
      return count + " small lines past the " + number;
    }

    @Override
    public String onePastZero() {
      return onePast("zero line");
    }

    @Override
    public String pastZero(String count) {
      return past(count, "zero line");
    }
  }

  /**
   * The words for the line at a volume.
   *
   * @throws IllegalArgumentException if no line above the zero line stands there
   */
  public static String of(BarrelScale scale, Volume volume) {
    return of(scale, volume, English.WORDS);
  }

  /** The same in other words. */
  public static String of(BarrelScale scale, Volume volume, Phrases phrases) {
    scale.requireLineAt(volume);
    if (scale.isNumberedAt(volume)) {
      return phrases.at(scale.numbers().at(volume));
    }
    Volume step = scale.numberedEvery();
    Volume before = step.times(volume.microlitres() / step.microlitres());
    long small = volume.minus(before).microlitres() / scale.graduation().microlitres();
    boolean isFromZero = before.equals(Volume.ZERO);
    String number = isFromZero ? "" : scale.numbers().at(before);
    if (small == 1) {
      return isFromZero ? phrases.onePastZero() : phrases.onePast(number);
    }
    String count = counted(small, phrases.counts());
    return isFromZero ? phrases.pastZero(count) : phrases.past(count, number);
  }

  private static String counted(long number, List<String> fromTwo) {
    long at = number - 2;
    return at < fromTwo.size() ? fromTwo.get((int) at) : Long.toString(number);
  }
}
