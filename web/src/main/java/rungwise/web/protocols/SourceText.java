package rungwise.web.protocols;

import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import rungwise.dosing.source.Seen;
import rungwise.dosing.source.Source;

/** A source as one choice of a form, with words of one's own where no text is named. */
final class SourceText {

  static final String COMMON_PRACTICE = "common_practice";
  static final String ASSUMPTION = "assumption";

  private static final String PUBLISHED = "published";
  private static final String BETWEEN = "|";
  private static final int PIECES = 4;

  private SourceText() {}

  /** The choice that stands for a published text. */
  static String kind(Source.Published source) {
    return String.join(
        BETWEEN, PUBLISHED, source.citation().id(), source.place(), seen(source.seen()));
  }

  /** The choice that a document's source is. */
  static String kind(Map<?, ?> source) {
    if (source.containsKey(PUBLISHED)) {
      return String.join(
          BETWEEN,
          PUBLISHED,
          String.valueOf(source.get(PUBLISHED)),
          String.valueOf(source.get("place")),
          String.valueOf(source.get("seen")));
    }
    return source.containsKey(COMMON_PRACTICE) ? COMMON_PRACTICE : ASSUMPTION;
  }

  /** The words of one's own that a document's source has; empty for a published text. */
  static String words(Map<?, ?> source) {
    if (source.containsKey(COMMON_PRACTICE)) {
      return String.valueOf(source.get(COMMON_PRACTICE));
    }
    return source.containsKey(ASSUMPTION) ? String.valueOf(source.get(ASSUMPTION)) : "";
  }

  /** What the document says of a choice. */
  static Map<String, Object> parts(String kind, String words) {
    List<String> pieces = List.of(kind.split(Pattern.quote(BETWEEN), PIECES));
    if (pieces.size() == PIECES) {
      return Map.of(PUBLISHED, pieces.get(1), "place", pieces.get(2), "seen", pieces.getLast());
    }
    return kind.isEmpty() ? Map.of() : Map.of(kind, words);
  }

  private static String seen(Seen seen) {
    return switch (seen) {
      case READ -> "read";
      case READ_IN_SECONDARY_COPY -> "secondary";
      case FROM_MEMORY -> "memory";
      case DERIVED -> "derived";
    };
  }
}
