package rungwise.web.protocols;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.protocols.ProtocolCase.Walk;
import rungwise.clinic.protocols.ProtocolRule;
import rungwise.clinic.standing.Reach.Reached;
import rungwise.dosing.protocol.Protocol;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * A protocol being written: its form, what the published sources say beside each part, and, once it
 * contradicts nothing, what it says, how it differs, and how a made-up man walks through it.
 */
public record WritePage(
    String base,
    Faults faults,
    List<Field> heads,
    Choice components,
    List<Field> composition,
    List<Section> sections,
    CaseForm caseForm,
    Optional<Checked> checked)
    implements NamesCourses {

  /**
   * A part of the form.
   *
   * @param published what the samples say of this part, each with its source
   */
  public record Section(String title, String hint, List<Line> lines, List<String> published) {
    public Section {
      lines = List.copyOf(lines);
      published = List.copyOf(published);
    }
  }

  /** Values with the source that they come from. */
  public record Line(
      String name, List<Field> fields, Optional<Choice> tick, Choice source, Field words) {
    public Line {
      fields = List.copyOf(fields);
    }
  }

  /**
   * What a protocol without faults says.
   *
   * @param reached every man on an earlier version whom it would hold
   * @param toConfirm the numbers that its signer confirms singly, if there are any
   */
  public record Checked(
      String title,
      List<ProtocolRule> rules,
      List<String> differences,
      List<Reached> reached,
      Optional<Choice> toConfirm,
      String document,
      Optional<Walk> walk,
      List<String> walkFaults) {
    public Checked {
      rules = List.copyOf(rules);
      differences = List.copyOf(differences);
      reached = List.copyOf(reached);
      walkFaults = List.copyOf(walkFaults);
    }
  }

  public WritePage {
    heads = List.copyOf(heads);
    composition = List.copyOf(composition);
    sections = List.copyOf(sections);
  }

  @Override
  public List<CourseId> namedCourses() {
    return checked.map(Checked::reached).stream()
        .flatMap(List::stream)
        .map(one -> one.course().id())
        .toList();
  }

  static WritePage of(
      String base,
      ProtocolForm form,
      List<Protocol> samples,
      CaseForm caseForm,
      Faults faults,
      Optional<Checked> checked) {
    var sheet = new WriteSheet(form, samples, faults);
    return new WritePage(
        base,
        faults,
        sheet.heads(),
        sheet.components(),
        sheet.composition(),
        sheet.sections(),
        caseForm,
        checked);
  }
}
