package rungwise.files;

import java.util.Optional;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import rungwise.quantities.Reading;

/** The value of a YAML document, as maps, lists and scalars. */
final class YamlText {

  /** Far more than any protocol has; the library goes one call deeper with each. */
  private static final int DEEPEST = 50;

  private YamlText() {}

  /** The value; an empty text for an empty document. */
  static Reading<Object> read(String yaml) {
    LoadSettings settings = LoadSettings.builder().setLabel("protocol").build();
    try {
      if (isDeeper(yaml, settings)) {
        return Reading.refused(
            "the document has more than "
                + DEEPEST
                + " lists or parts within each other: no protocol has. Take out what was pasted"
                + " in.");
      }
      return Reading.of(
          Optional.ofNullable(new Load(settings).loadFromString(yaml)).orElse(/* other= */ ""));
    } catch (YamlEngineException notYaml) {
      return Reading.refused("the document is not YAML: " + notYaml.getMessage());
    }
  }

  private static boolean isDeeper(String yaml, LoadSettings settings) {
    int depth = 0;
    for (Event event : new Parse(settings).parseString(yaml)) {
      switch (event.getEventId()) {
        case SequenceStart, MappingStart -> depth++;
        case SequenceEnd, MappingEnd -> depth--;
        default -> {}
      }
      if (depth > DEEPEST) {
        return true;
      }
    }
    return false;
  }
}
