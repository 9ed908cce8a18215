package rungwise.web.fitting;

import java.util.List;
import rungwise.clinic.fitting.ChosenCourses;
import rungwise.clinic.fitting.FitDraft;
import rungwise.dosing.fit.Doubt;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.web.page.Faults;
import rungwise.web.page.HeldField;

/**
 * The courses that a choice leads to, before a fit is run.
 *
 * @param isFew whether the result will not be offered for signing
 * @param isEnough whether a fit can be tried at all
 * @param held the choice, sent along unseen
 */
public record ChosenPage(
    Faults faults,
    int courses,
    int injections,
    String reference,
    List<Group> groups,
    List<String> leftOut,
    boolean isFew,
    boolean isEnough,
    List<HeldField> held) {

  /**
   * One group.
   *
   * @param isSmall whether it is too small to say much
   */
  public record Group(String words, int courses, boolean isSmall) {}

  public ChosenPage {
    groups = List.copyOf(groups);
    leftOut = List.copyOf(leftOut);
    held = List.copyOf(held);
  }

  static ChosenPage of(ChosenCourses chosen, FitDraft draft) {
    return new ChosenPage(
        Faults.NONE,
        chosen.courses().count(),
        chosen.courses().trials(),
        chosen.reference().composition(),
        chosen.groups().stream().map(ChosenPage::group).toList(),
        chosen.leftOutWords(),
        chosen.courses().count() < Doubt.LEAST_COURSES,
        chosen.isEnough(),
        ChooseForm.held(draft));
  }

  private static Group group(ChosenCourses.OfGroup group) {
    return new Group(
        AetiologyGroup.of(group.token()).map(AetiologyGroup::words).orElse(group.token()),
        group.courses(),
        group.courses() < Doubt.LEAST_OF_GROUP);
  }
}
