package rungwise.web.dose;

import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
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
  ModelAndView show(@RequestParam Map<String, String> typed) {
    var form = new DoseForm(typed);
    List<Preparation> kept = choices.preparations().get();
    boolean isSample = kept.isEmpty();
    List<Preparation> offered = isSample ? SamplePreparations.all() : kept;
    DosePage page = DosePage.of(form, offered, isSample, form.answer(offered));
    return page.faults().isEmpty() ? Page.of(PAGE, page) : Page.refused(PAGE, page);
  }
}
