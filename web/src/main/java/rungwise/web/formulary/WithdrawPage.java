package rungwise.web.formulary;

import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.standing.Reach.Reached;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * A preparation before it is withdrawn.
 *
 * @param reached every man whose dose would be suspended
 */
public record WithdrawPage(
    String path, String name, Faults faults, List<Reached> reached, Field reason)
    implements NamesCourses {

  public WithdrawPage {
    reached = List.copyOf(reached);
  }

  static WithdrawPage of(
      ClinicPreparation kept, List<Reached> reached, String reason, Faults faults) {
    return new WithdrawPage(
        "/preparations/" + kept.id(),
        kept.preparation().name(),
        faults,
        reached,
        Field.of(Field.Kind.TEXT, "reason", "Reason").withValue(reason).withFaults(faults));
  }

  @Override
  public List<CourseId> namedCourses() {
    return reached.stream().map(one -> one.course().id()).toList();
  }
}
