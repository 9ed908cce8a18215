package rungwise.web.call;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.sheet.CallView;
import rungwise.dosing.known.Component;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.urgent.rescue.RescueDrug;
import rungwise.web.page.DoseLines;

/**
 * The letter that goes with him to whoever treats him. What nobody knows says so.
 *
 * @param lasted how long it has lasted and since when, or that nobody knows
 * @param dose what he injected, whole; empty if nobody knows
 * @param blood what whoever treats low blood pressure must know of what he injected
 * @param allergy to a component of what is injected
 * @param given what was given and measured, the first time first
 * @param number of the clinic; or that it is not known
 * @param made when it was made
 */
public record CallLetterPage(
    CallView call,
    String lasted,
    Optional<DoseLines> dose,
    String blood,
    String allergy,
    List<String> given,
    String number,
    String made) {

  private static final String NOT_KNOWN = "not known";

  public CallLetterPage {
    given = List.copyOf(given);
  }

  static CallLetterPage of(
      CallView call, List<String> given, String clinicNumber, Ticking ticking, ClinicTime time) {
    return new CallLetterPage(
        call,
        call.began()
            .filter(at -> !ticking.isWrong() && !at.isAfter(ticking.now()))
            .map(at -> Counted.of(at, ticking.now(), time))
            .map(counted -> counted.elapsed() + ", since " + counted.start())
            .orElse(NOT_KNOWN + ": read it as 4 hours or more"),
        call.dose().map(DoseLines::of),
        blood(call),
        allergy(call.allergy()),
        given,
        call.number()
            .or(() -> Optional.of(clinicNumber).filter(one -> !one.isEmpty()))
            .orElse(NOT_KNOWN),
        time.words(ticking.now()));
  }

  private static String blood(CallView call) {
    return call.dose()
        .map(
            dose ->
                dose.preparation().holds(Component.PHENTOLAMINE)
                    ? RescueDrug.EPINEPHRINE_AFTER_PHENTOLAMINE.value()
                    : "What is on record holds no phentolamine.")
        .orElse(
            "Whether he had phentolamine is "
                + NOT_KNOWN
                + ": if he had, epinephrine for low pressure may drop it further.");
  }

  private static String allergy(Answer answer) {
    return switch (answer) {
      case YES -> "allergic to a component of what is injected: ask him to which";
      case NO -> "none to a component of what is injected, as he was asked; others " + NOT_KNOWN;
      case NOT_KNOWN -> NOT_KNOWN;
    };
  }

  public String callPath() {
    return "/courses/" + call.course() + "/call";
  }
}
