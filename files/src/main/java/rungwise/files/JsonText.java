package rungwise.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import rungwise.quantities.Reading;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;

/**
 * Reads a JSON text (RFC 8259) into maps, lists, texts, yes or no, and numbers of double precision.
 * What is null is absent. A key that stands twice in one object is a fault.
 */
final class JsonText {

  private static final JsonFactory FACTORY =
      JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();

  /** What the library says of its own source, which tells a reader nothing. */
  private static final Pattern OF_THE_LIBRARY = Pattern.compile(" \\(start marker at .*");

  private JsonText() {}

  /** The object, or where the text ends to be one. */
  static Reading<Map<String, Object>> object(String text) {
    try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), text)) {
      if (parser.nextToken() != JsonToken.START_OBJECT) {
        return Reading.refused("line 1: a JSON object is expected, which begins with {");
      }
      Map<String, Object> object = members(parser);
      return parser.nextToken() == null
          ? Reading.of(object)
          : Reading.refused("line " + line(parser) + ": more text follows after the end");
    } catch (JacksonException notJson) {
      return Reading.refused(
          "line "
              + Math.max(1, notJson.getLocation().getLineNr())
              + ": this is not JSON: "
              + OF_THE_LIBRARY.matcher(notJson.getOriginalMessage()).replaceAll(""));
    }
  }

  private static int line(JsonParser parser) {
    return parser.currentTokenLocation().getLineNr();
  }

  private static Map<String, Object> members(JsonParser parser) {
    var members = new LinkedHashMap<String, Object>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      parser.nextToken();
      value(parser).ifPresent(value -> members.put(key, value));
    }
    return members;
  }

  private static List<Object> items(JsonParser parser) {
    var items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      value(parser).ifPresent(items::add);
    }
    return items;
  }

  private static Optional<Object> value(JsonParser parser) {
    return switch (parser.currentToken()) {
      case START_OBJECT -> Optional.of(members(parser));
      case START_ARRAY -> Optional.of(items(parser));
      case VALUE_STRING -> Optional.of(parser.getString());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> Optional.of(parser.getDoubleValue());
      case VALUE_TRUE -> Optional.of(true);
      case VALUE_FALSE -> Optional.of(false);
      default -> Optional.empty();
    };
  }
}
