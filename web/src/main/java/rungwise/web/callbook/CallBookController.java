package rungwise.web.callbook;

import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;

/** What the clinic keeps for calls. */
@Controller
final class CallBookController {

  private static final Logger LOG = LoggerFactory.getLogger(CallBookController.class);
  private static final String PATH = "/call-book";
  private static final String PAGE = "callbook/book";
  private static final String NOTICE = "notice";

  private final CallBooks books;
  private final People people;
  private final ClinicTime time;
  private final InstantSource clock;

  CallBookController(CallBooks books, People people, ClinicTime time, InstantSource clock) {
    this.books = books;
    this.people = people;
    this.time = time;
    this.clock = clock;
  }

  @GetMapping(PATH)
  ModelAndView show(@AuthenticationPrincipal Account actor, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, Typed.NOTHING, notice, Faults.NONE));
  }

  @PostMapping(PATH + "/protocol")
  ModelAndView sign(
      @AuthenticationPrincipal Account actor,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    return answer(
        actor,
        sent,
        carried,
        books.sign(actor, texts(sent)).map(version -> "Version " + version + " is signed."));
  }

  @PostMapping(PATH + "/departments")
  ModelAndView keep(
      @AuthenticationPrincipal Account actor,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    return answer(
        actor,
        sent,
        carried,
        books.keep(actor, texts(sent)).map(name -> name + " is on the list."));
  }

  @PostMapping(PATH + "/departments/remove")
  ModelAndView remove(
      @AuthenticationPrincipal Account actor,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    return answer(
        actor,
        sent,
        carried,
        books.remove(actor, texts(sent)).map(name -> name + " is no longer on the list."));
  }

  @GetMapping(PATH + "/print")
  ModelAndView print() {
    return Page.of("callbook/print", PrintedCallPage.of(books, time, clock.instant()));
  }

  @PostMapping(PATH + "/print")
  ModelAndView printed(
      @AuthenticationPrincipal Account actor,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    String edition = new Typed(sent).text("edition");
    boolean isNumber = edition.matches("[0-9]{1,15}");
    return answer(
        actor,
        sent,
        carried,
        books
            .print(actor, isNumber ? Long.parseLong(edition) : -1)
            .map(number -> "It is written down that you printed edition " + number + "."));
  }

  private ModelAndView answer(
      Account actor,
      MultiValueMap<String, String> sent,
      RedirectAttributes carried,
      Reading<String> outcome) {
    if (outcome instanceof Reading.Refused<String> refused) {
      return Page.refused(PAGE, page(actor, new Typed(sent), "", Faults.of(refused)));
    }
    LOG.info("What is kept for calls was changed by {}", actor.id());
    carried.addFlashAttribute(NOTICE, outcome.orThrow());
    return Page.redirect(PATH);
  }

  private static Map<String, String> texts(MultiValueMap<String, String> sent) {
    var typed = new Typed(sent);
    var texts = new LinkedHashMap<String, String>();
    sent.keySet().forEach(field -> texts.put(field, typed.text(field)));
    return texts;
  }

  private CallBookPage page(Account actor, Typed typed, String notice, Faults faults) {
    return CallBookPage.of(books, actor, time, this::name, typed, notice, faults);
  }

  private String name(AccountId id) {
    return people.find(id).map(Account::fullName).orElse("the program");
  }
}
