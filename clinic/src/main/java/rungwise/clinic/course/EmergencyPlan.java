package rungwise.clinic.course;

import java.util.List;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Sourced;

/**
 * What a man does when an erection does not go down, agreed before home use.
 *
 * @param more what the clinic's protocol asks for beside these
 */
public record EmergencyPlan(
    String hospital, String afterHoursNumber, String transport, List<Said> more) {

  /** One more line of a plan. */
  public record Said(String asked, String answer) {
    public Said {
      if (asked.isBlank() || answer.isBlank()) {
        throw new IllegalArgumentException("bug: an emergency plan with a gap");
      }
    }
  }

  public EmergencyPlan {
    more = List.copyOf(more);
    if (hospital.isBlank() || afterHoursNumber.isBlank() || transport.isBlank()) {
      throw new IllegalArgumentException("bug: an emergency plan with a gap");
    }
  }

  /** A plan that says what every plan must say. */
  public EmergencyPlan(String hospital, String afterHoursNumber, String transport) {
    this(hospital, afterHoursNumber, transport, List.of());
  }

  /** What a protocol asks of a plan that this one does not say, in words. */
  List<String> unanswered(Protocol.Home asked) {
    return asked.plan().stream()
        .map(Sourced::value)
        .filter(question -> !answers(question))
        .map(question -> "the plan does not say: " + question)
        .toList();
  }

  /** Whether it answers a question of the protocol. */
  public boolean answers(String question) {
    return more.stream().anyMatch(said -> said.asked().equals(question));
  }

  /** The answer to a question of the protocol; empty if it has none. */
  public String answerTo(String question) {
    return more.stream()
        .filter(said -> said.asked().equals(question))
        .map(Said::answer)
        .findFirst()
        .orElse("");
  }

  public String words() {
    var words =
        new StringBuilder(hospital + "; after hours " + afterHoursNumber + "; " + transport);
    more.forEach(
        said -> words.append("; ").append(said.asked()).append(": ").append(said.answer()));
    return words.toString();
  }
}
