package rungwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * The lines below a drawing that say what its signs mean and what it shows, each behind its sign
 * and broken so that it fits.
 */
public final class Key {

  /**
   * One sentence of the key.
   *
   * @param isLoud whether it is written in bold type and in the colour of danger
   */
  public record Entry(Sign sign, String words, boolean isLoud) {
    public static Entry of(Sign sign, String words) {
      return new Entry(sign, words, /* isLoud= */ false);
    }

    public static Entry loud(String words) {
      return new Entry(Sign.NONE, words, /* isLoud= */ true);
    }
  }

  private static final double LINE_HEIGHT = 24;
  private static final double BETWEEN = 8;
  private static final double SIGN = 10;
  private static final double WORDS = 28;

  /** How wide a letter of a sentence is on average, as a part of the size of its text. */
  private static final double LETTER = 0.5;

  private static final Pattern AFTER_NUMBER = Pattern.compile("(?<=[0-9]|-unit) (?=\\p{L})");
  private static final String NO_BREAK_SPACE = "\u00A0";

  private final List<SvgElement> parts = new ArrayList<>();
  private final double left;
  private final int letters;
  private double bottom;

  /**
   * A key that begins at a point.
   *
   * @param width how much room there is for signs and words
   */
  public Key(double left, double top, double width) {
    this.left = left;
    this.bottom = top;
    this.letters = (int) ((width - WORDS) / (LETTER * Pen.TEXT));
  }

  public void add(Entry entry) {
    bottom += BETWEEN;
    parts.addAll(entry.sign().standingAt(left + SIGN, bottom + LINE_HEIGHT - BETWEEN / 2));
    double start = entry.sign() == Sign.NONE ? left : left + WORDS;
    for (String line : broken(entry.words(), letters)) {
      bottom += LINE_HEIGHT;
      SvgElement text = Pen.text(className(entry), start, bottom - BETWEEN / 2, line);
      parts.add(entry.isLoud() ? Pen.bold(text) : text);
    }
  }

  private static String className(Entry entry) {
    return entry.isLoud() ? "drawing-key drawing-danger" : "drawing-key";
  }

  public List<SvgElement> parts() {
    return List.copyOf(parts);
  }

  /** Where the key ends. */
  public double bottom() {
    return bottom + BETWEEN;
  }

  /** A text in lines of at most so many letters; a number stays with its unit. */
  public static List<String> broken(String words, int letters) {
    var lines = new ArrayList<String>();
    var line = new StringBuilder();
    for (String word : held(words).split(" ", -1)) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > letters) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return List.copyOf(lines);
  }

  private static String held(String words) {
    return AFTER_NUMBER.matcher(words).replaceAll(NO_BREAK_SPACE);
  }
}
