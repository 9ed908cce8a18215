package rungwise.web.screening;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.screening.BaselineDraft;
import rungwise.clinic.screening.ScreeningDraft;
import rungwise.clinic.screening.Screenings;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Topic;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;

/** The forms of the screening page as typed: fields by name, an absent one is empty. */
record ScreeningForms(Map<String, String> typed) {

  static final String BASIS = "basis";
  static final String STILL_TRUE = "stillTrue";
  static final String CONDITION = "condition";

  static final ScreeningForms EMPTY = new ScreeningForms(Map.of());

  ScreeningForms {
    typed = Map.copyOf(typed);
  }

  static String answerTo(String condition) {
    return "answer-" + condition;
  }

  static String restOf(String topic) {
    return "rest-" + topic;
  }

  static String reasonFor(String condition) {
    return "reason-" + condition;
  }

  static String shownByFor(String condition) {
    return "shownBy-" + condition;
  }

  static String whyWrong(String condition) {
    return "wrong-" + condition;
  }

  /** What was refused of a yes that was wrong, each at its field. */
  static Faults wrongs(Reading.Refused<?> refused, String condition) {
    return Faults.of(
        refused.placed(),
        field -> field.equals(Screenings.SHOWN_BY) ? shownByFor(condition) : whyWrong(condition));
  }

  /** What was typed into a field. */
  String said(String field) {
    return said(field, "");
  }

  /** What was typed into a field, or what is on record where nothing was typed. */
  String said(String field, String onRecord) {
    return typed.getOrDefault(field, onRecord);
  }

  boolean isTicked(String field) {
    return typed.containsKey(field);
  }

  ScreeningDraft answers() {
    var answers = new HashMap<String, String>();
    for (Condition condition : Condition.values()) {
      String answer = said(answerTo(condition.name()));
      if (!answer.isEmpty()) {
        answers.put(condition.name(), answer);
      }
    }
    Set<Topic> rest =
        Arrays.stream(Topic.values())
            .filter(topic -> isTicked(restOf(topic.name())))
            .collect(Collectors.toSet());
    return new ScreeningDraft(answers, isTicked(STILL_TRUE), rest, basis());
  }

  private Optional<Long> basis() {
    return Optional.of(said(BASIS))
        .filter(text -> text.matches("[0-9]{1,18}"))
        .map(Long::parseLong);
  }

  BaselineDraft baseline() {
    return new BaselineDraft(
        said(BaselineDraft.SCORE),
        said(BaselineDraft.HANDS),
        said(BaselineDraft.SIGHT),
        said(BaselineDraft.INJECTOR));
  }
}
