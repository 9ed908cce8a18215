package rungwise.dosing.urgent.rescue;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;

/**
 * What came of reading a strength or a dose that somebody typed: a value, or why not.
 *
 * @param <T> what was wanted
 */
public sealed interface Typed<T> {

  /** A value was read. A notice says what was understood differently from what was typed. */
  record Read<T>(T value, List<String> notices) implements Typed<T> {
    public Read {
      notices = List.copyOf(notices);
    }
  }

  record Refused<T>(Refusal why) implements Typed<T> {}

  /** Reads a strength such as "10 mg/mL". */
  static Typed<Concentration> strength(Asked asked, String text) {
    return read(
        asked,
        text,
        Concentration::parse,
        typed ->
            Mass.parse(typed).found().isPresent()
                ? Optional.of(new Refusal.MassWithoutVolume(asked, shown(typed)))
                : Optional.empty());
  }

  /** Reads a dose such as "200 mcg". */
  static Typed<Mass> dose(String text) {
    return read(Asked.DOSE, text, Mass::parse, typed -> Optional.empty());
  }

  private static <T> Typed<T> read(
      Asked asked,
      String text,
      Function<String, Reading<T>> parser,
      Function<String, Optional<Refusal>> also) {
    String start = text.substring(0, Math.min(text.length(), Spelling.LOOKED_AT));
    if (Spelling.RATIO.matcher(start).find()) {
      return new Refused<>(new Refusal.Ratio(asked, shown(text)));
    }
    if (Spelling.NUMBER_ALONE.matcher(start).matches()) {
      return new Refused<>(new Refusal.NoUnit(asked, shown(text)));
    }
    if (Spelling.VOLUME.matcher(start).matches()) {
      return new Refused<>(new Refusal.VolumeForMass(asked, shown(text)));
    }
    return switch (parser.apply(text)) {
      case Reading.Read<T> read -> new Read<>(read.value(), read.notices());
      case Reading.Refused<T> refused ->
          new Refused<>(
              also.apply(text)
                  .orElseGet(
                      () ->
                          new Refusal.NotRead(
                              asked, shown(text), String.join("; ", refused.faults()) + ".")));
    };
  }

  private static String shown(String text) {
    String plain = Spelling.UNSEEN.matcher(text.strip()).replaceAll("?");
    return plain.length() > Spelling.LONGEST ? plain.substring(0, Spelling.LONGEST) + "..." : plain;
  }

  /** Spellings that are told apart, so that each has its own reason. */
  final class Spelling {

    private static final int LONGEST = 40;

    /** No parser reads as much; what is longer is refused by it. */
    private static final int LOOKED_AT = 200;

    private static final Pattern UNSEEN = Pattern.compile("\\p{C}");

    /**
     * A colon of any script; a percent or per mille sign; a number to, in, per or over a number;
     * two bare numbers with a dash; and the words of such strengths.
     */
    private static final Pattern RATIO =
        Pattern.compile(
            "[:\\uFF1A\\u2236\\uFE55\\uFE13\\uA789\\u02D0\\u02F8\\u0703\\u05C3\\u205A\\u2237]"
                + "|[%\\uFF05\\uFE6A\\u066A\\u2030\\u2031]"
                + "|\\p{N}[\\p{Z}\\s]*[/\\u2044\\u2215\\uFF0F\\u00F7|][\\p{Z}\\s]*\\p{N}"
                + "|\\p{N}[\\p{Z}\\s\\p{Pd}]*(?:in|to|per|of|over|out)"
                + "(?:[\\p{Z}\\s\\p{Pd}]+\\p{L}+)?[\\p{Z}\\s\\p{Pd}]*\\p{N}"
                + "|^[\\p{N}\\p{Z}\\s.,]+\\p{Pd}[\\p{N}\\p{Z}\\s.,]+$"
                + "|\\b(?:ratio|parts?|percent|per\\s+cent|pct|ppm|w/v|one\\s+in)\\b",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern NUMBER_ALONE =
        Pattern.compile("[\\p{Z}\\s]*[\\p{N}.,]+[\\p{Z}\\s]*");

    private static final Pattern VOLUME =
        Pattern.compile(
            "[\\p{Z}\\s]*[\\p{N}.,]+[\\p{Z}\\s]*"
                + "(?:mls?|c{2}|millilit(?:er|re)s?|[\\u00B5\\u03BCu]l)(?:[\\p{Z}\\s/].*)?",
            Pattern.CASE_INSENSITIVE);

    private Spelling() {}
  }
}
