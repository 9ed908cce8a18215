package rungwise.web.handout;

import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.handout.Sheets;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.sheet.CourseViews;
import rungwise.quantities.Reading;
import rungwise.web.page.Page;

/** What is said to patients, to be read and signed by a prescriber for the whole clinic. */
@Controller
final class WordsController {

  private static final Logger LOG = LoggerFactory.getLogger(WordsController.class);
  private static final String PAGE = "handout/words";
  private static final String NOTICE = "notice";

  private final Sheets sheets;
  private final CourseViews views;

  WordsController(Sheets sheets, CourseViews views) {
    this.sheets = sheets;
    this.views = views;
  }

  @GetMapping("/words")
  ModelAndView show(@AuthenticationPrincipal Account actor, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(
        PAGE, WordsPage.of(sheets.signedWords(views::nameOf), actor.may(Role.PRESCRIBER), notice));
  }

  @PostMapping("/words/sign")
  ModelAndView sign(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "0") int version,
      RedirectAttributes carried) {
    String notice =
        switch (sheets.signWords(actor, version)) {
          case Reading.Read<Integer> read -> {
            LOG.info("Words of patients, version {}, signed by {}", version, actor.id());
            yield "Signed. Sheets no longer say that their words are a draft.";
          }
          case Reading.Refused<Integer> refused -> String.join(" ", refused.faults());
        };
    carried.addFlashAttribute(NOTICE, notice);
    return Page.redirect("/words");
  }
}
