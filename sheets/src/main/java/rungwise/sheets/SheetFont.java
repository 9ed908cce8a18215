package rungwise.sheets;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URL;
import java.text.Normalizer;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The letters of all documents: the family of the pages, as a font that a document embeds. */
final class SheetFont {

  static final String FAMILY = "Sheet";

  private static final String REGULAR = "atkinson-hyperlegible-next-400.ttf";
  private static final String BOLD = "atkinson-hyperlegible-next-700.ttf";
  private static final List<CmapLookup> LETTERS = List.of(letters(REGULAR), letters(BOLD));

  private SheetFont() {}

  /** The rules by which text and drawings of a document find it. */
  static String rules() {
    return rule(REGULAR, "400") + rule(BOLD, "700");
  }

  private static String rule(String name, String weight) {
    return "@font-face { font-family: "
        + FAMILY
        + "; src: url('"
        + resource(name)
        + "'); font-weight: "
        + weight
        + "; -fs-font-subset: subset; }\n";
  }

  /** A text as it is printed: letters and their marks as one character. */
  static String composed(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFC);
  }

  /** The characters of a text for which it has no shape, each once. */
  static String missing(String text) {
    return composed(text)
        .codePoints()
        .filter(point -> LETTERS.stream().anyMatch(letters -> letters.getGlyphId(point) == 0))
        .distinct()
        .mapToObj(Character::toString)
        .collect(Collectors.joining(" "));
  }

  private static CmapLookup letters(String name) {
    try (InputStream in = resource(name).openStream()) {
      var font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
      return font.getUnicodeCmapLookup();
    } catch (IOException e) {
      throw new UncheckedIOException("bug: the font " + name + " cannot be read", e);
    }
  }

  private static URL resource(String name) {
    return Objects.requireNonNull(SheetFont.class.getResource(name), name);
  }
}
