package rungwise.web.teaching;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.clinic.teaching.ReadinessView;
import rungwise.dosing.source.Sourced;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The page of what comes before home use.
 *
 * @param notice what was just done; may be empty
 * @param mayRecord whether the person may write it down
 */
public record ReadinessPage(
    CourseView.Man man,
    String coursePath,
    String path,
    String notice,
    Faults faults,
    ReadinessView view,
    boolean mayRecord,
    List<Row> rows) {

  /**
   * One item with its form.
   *
   * @param isOpen whether its form is shown unfolded
   * @param plan the lines of the emergency plan; empty for every other item
   * @param asked what the protocol asks the plan for, by the name of its hidden field
   */
  public record Row(
      ReadinessView.Item item,
      boolean isOpen,
      Field day,
      List<Field> plan,
      Map<String, String> asked,
      Field note) {
    public Row {
      plan = List.copyOf(plan);
      asked = Collections.unmodifiableMap(new LinkedHashMap<>(asked));
    }
  }

  public ReadinessPage {
    rows = List.copyOf(rows);
  }

  static ReadinessPage of(
      CourseState state,
      CourseView course,
      Account actor,
      ClinicTime time,
      ReadinessForm form,
      Faults faults) {
    ReadinessView view = ReadinessView.of(state, time.dayOf(state.now()), course);
    String coursePath = "/courses/" + course.id();
    String today = time.dateText(state.now());
    Optional<EmergencyPlan> agreed = state.file().emergencyPlan();
    List<String> questions =
        state.question().protocol().home().plan().stream().map(Sourced::value).toList();
    return new ReadinessPage(
        course.man(),
        coursePath,
        coursePath + "/before-home",
        "",
        faults,
        view,
        By.CLINICIAN.includes(actor),
        view.items().stream()
            .map(item -> row(item, today, agreed, questions, form, faults))
            .toList());
  }

  ReadinessPage withNotice(String text) {
    return new ReadinessPage(man, coursePath, path, text, faults, view, mayRecord, rows);
  }

  private static Row row(
      ReadinessView.Item item,
      String today,
      Optional<EmergencyPlan> agreed,
      List<String> questions,
      ReadinessForm form,
      Faults faults) {
    var fields = new ItemFields(item.token(), form, faults);
    return new Row(
        item,
        !item.isOnRecord() || form.item().equals(item.token()),
        fields.day(today),
        item.isPlan()
            ? Stream.of(fields.plan(agreed), fields.answers(agreed, questions))
                .flatMap(List::stream)
                .toList()
            : List.of(),
        item.isPlan() ? fields.asked(questions) : Map.of(),
        fields.note());
  }

  /** The fields of one item. */
  private record ItemFields(String item, ReadinessForm form, Faults faults) {

    Field day(String today) {
      return field(Field.Kind.DATE, ReadinessDraft.DAY, "Day on which it was done", today)
          .withFaults(faults);
    }

    List<Field> plan(Optional<EmergencyPlan> agreed) {
      return List.of(
          field(
                  Field.Kind.TEXT,
                  ReadinessDraft.HOSPITAL,
                  "Hospital that he goes to",
                  agreed.map(EmergencyPlan::hospital).orElse(""))
              .withFaults(faults),
          field(
                  Field.Kind.TEXT,
                  ReadinessDraft.AFTER_HOURS,
                  "Number that is answered after hours",
                  agreed.map(EmergencyPlan::afterHoursNumber).orElse(""))
              .withFaults(faults),
          field(
                  Field.Kind.TEXT,
                  ReadinessDraft.TRANSPORT,
                  "How he gets there, and who drives",
                  agreed.map(EmergencyPlan::transport).orElse(""))
              .withFaults(faults));
    }

    List<Field> answers(Optional<EmergencyPlan> agreed, List<String> questions) {
      var fields = new ArrayList<Field>();
      for (String question : questions) {
        String name = ReadinessDraft.answerTo(fields.size() + 1);
        String before = agreed.map(plan -> plan.answerTo(question)).orElse("");
        fields.add(field(Field.Kind.TEXT, name, question, before));
      }
      return fields;
    }

    Map<String, String> asked(List<String> questions) {
      var asked = new LinkedHashMap<String, String>();
      for (String question : questions) {
        String field = ReadinessForm.askedField(asked.size() + 1);
        asked.put(ReadinessForm.nameOf(item, field), question);
      }
      return asked;
    }

    Field note() {
      return field(Field.Kind.TEXT, ReadinessDraft.NOTE, "Note", "")
          .withHint("What was shown, taught or agreed, and with whom")
          .optional()
          .withFaults(faults);
    }

    private Field field(Field.Kind kind, String name, String label, String onRecord) {
      return Field.of(kind, ReadinessForm.nameOf(item, name), label)
          .withValue(form.said(item, name, onRecord));
    }
  }
}
