package rungwise.checks.topics;

import java.util.function.Function;

/** Every topic of the reference rows that the product can answer. */
public final class Topics {

  private static final TopicTable TABLE = table();

  private Topics() {}

  private static TopicTable table() {
    var table = new TopicTable();
    MarkTopics.addTo(table);
    BarrelTopics.addTo(table);
    ContentTopics.addTo(table);
    TextTopics.addTo(table);
    ReadingTopics.addTo(table);
    DurationTopics.addTo(table);
    ProtocolTopics.addTo(table);
    AdviceTopics.addTo(table);
    ScreeningTopics.addTo(table);
    TechniqueTopics.addTo(table);
    VialTopics.addTo(table);
    StrengthTopics.addTo(table);
    UrgentTopics.addTo(table);
    return table;
  }

  /**
   * The product's answer to a topic.
   *
   * @throws InputFault if an input is missing, not understood, or not looked at
   */
  public static Answer answer(String topic, Input input) {
    Function<Input, Answer> found = TABLE.find(topic, input).orElse(Topics::notBuilt);
    Answer answer = answerOrFault(found, input);
    if (!(answer instanceof Answer.NotBuilt) && !input.neglected().isEmpty()) {
      throw new InputFault("this topic does not know the input " + input.neglected());
    }
    return answer;
  }

  private static Answer answerOrFault(Function<Input, Answer> found, Input input) {
    try {
      return found.apply(input);
    } catch (IllegalArgumentException | IllegalStateException | ArithmeticException e) {
      throw new InputFault("the product refuses it: " + e.getMessage());
    }
  }

  private static Answer notBuilt(Input input) {
    return new Answer.NotBuilt("no topic of that name is bound to the product");
  }
}
