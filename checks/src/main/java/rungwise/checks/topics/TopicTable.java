package rungwise.checks.topics;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Topics by name, and within a topic by the thing asked. */
final class TopicTable {

  /** The inputs that say what is asked, the first that is there counting. */
  private static final List<String> SELECTORS = List.of("op", "question");

  private static final String ANYTHING = "*";

  private record Key(String topic, String asked) {}

  private final Map<Key, Function<Input, Answer>> answers = new HashMap<>();

  /** Answers one question of a topic. */
  TopicTable on(String topic, String asked, Function<Input, Answer> answer) {
    if (answers.put(new Key(topic, asked), answer) != null) {
      throw new IllegalStateException("bug: " + topic + " " + asked + " is answered twice");
    }
    return this;
  }

  /** Answers a topic whose rows do not say what is asked. */
  TopicTable on(String topic, Function<Input, Answer> answer) {
    return on(topic, ANYTHING, answer);
  }

  Optional<Function<Input, Answer>> find(String topic, Input input) {
    String asked =
        SELECTORS.stream().map(input::find).flatMap(Optional::stream).findFirst().orElse(ANYTHING);
    return Optional.ofNullable(answers.get(new Key(topic, asked)));
  }
}
