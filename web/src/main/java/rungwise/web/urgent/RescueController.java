package rungwise.web.urgent;

import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.web.page.Page;

/** "How is phenylephrine prepared?" All of the question stands in the address; nothing is kept. */
@Controller
final class RescueController {

  private static final String PAGE = "urgent/rescue";

  @GetMapping("/call/rescue")
  ModelAndView show(@RequestParam Map<String, String> typed) {
    RescuePage page = RescuePage.of(new RescueForm(typed).answer());
    return page.faults().isEmpty() ? Page.of(PAGE, page) : Page.refused(PAGE, page);
  }
}
