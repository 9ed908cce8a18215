package rungwise.web.dose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.dose.DoseAnswer;
import rungwise.clinic.dose.Wanted;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;
import rungwise.web.page.Page;
import rungwise.web.start.StartChoices;

/** "What is this much on that syringe?" All of the question stands in the address. */
@Controller
final class DoseController {

  private static final String PAGE = "dose/dose";

  private final StartChoices choices;

  DoseController(StartChoices choices) {
    this.choices = choices;
  }

  @GetMapping("/dose")
  ModelAndView show(@ModelAttribute DoseForm form) {
    List<Preparation> offered = offered();
    if (form.isEmpty()) {
      return Page.of(PAGE, DosePage.of(form, offered, isSample(), Optional.empty(), List.of()));
    }
    Reading<DoseAnswer> reading = answer(form, offered);
    return Page.of(PAGE, DosePage.of(form, offered, isSample(), reading.found(), reading.faults()));
  }

  private boolean isSample() {
    return choices.preparations().get().isEmpty();
  }

  /** The clinic's own preparations; the published samples while it has none. */
  private List<Preparation> offered() {
    return isSample() ? SamplePreparations.all() : choices.preparations().get();
  }

  private static Reading<DoseAnswer> answer(DoseForm form, List<Preparation> offered) {
    var faults = new ArrayList<String>();
    Optional<Preparation> preparation =
        offered.stream().filter(one -> one.id().value().equals(form.preparationId())).findFirst();
    if (preparation.isEmpty()) {
      faults.add("Choose the preparation.");
    }
    Optional<Barrel> barrel =
        Barrels.of(form.barrelToken()).filter(one -> one.marking().graduationVolume().isPresent());
    if (barrel.isEmpty()) {
      faults.add("Choose a syringe with printed lines.");
    }
    Reading<Wanted> wanted = wanted(form);
    faults.addAll(wanted.faults());
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return wanted.orThrow().of(preparation.orElseThrow(), barrel.orElseThrow(), wanted.notices());
  }

  private static Reading<Wanted> wanted(DoseForm form) {
    return switch (form.askedBy()) {
      case "volume" -> Volume.parseMillilitres(form.typedAmount()).map(Wanted.ByVolume::new);
      case "mark" -> MarkNumber.parse(form.typedAmount()).map(Wanted.ByMark::new);
      default ->
          Component.of(form.askedBy())
              .map(component -> content(component, form.typedAmount()))
              .orElseGet(() -> Reading.refused("Choose what the number is."));
    };
  }

  private static Reading<Wanted> content(Component component, String text) {
    Reading<Mass> mass =
        component.unit() == MassUnit.MICROGRAM
            ? Mass.parseMicrograms(text)
            : Mass.parseMilligrams(text);
    return mass.map(found -> new Wanted.ByContent(component, found));
  }
}
