package rungwise.web.handout;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.handout.Sheets;
import rungwise.clinic.words.SheetCode;
import rungwise.web.page.Page;
import rungwise.web.secrets.AskLimiter;
import rungwise.web.secrets.Refusal;

/** Whether a sheet is current, for anybody who has its code. */
@Controller
final class CurrentController {

  static final String PATH = "/sheet";

  private static final String PAGE = "handout/current";

  private final Sheets sheets;
  private final AskLimiter limiter;

  CurrentController(Sheets sheets, AskLimiter limiter) {
    this.sheets = sheets;
    this.limiter = limiter;
  }

  @GetMapping(PATH)
  ModelAndView show(
      @RequestParam(defaultValue = "") String code,
      HttpServletRequest request,
      HttpServletResponse response) {
    if (code.isBlank()) {
      return Page.of(PAGE, CurrentPage.empty());
    }
    Optional<Refusal> refusal = limiter.askOnce(request.getRemoteAddr());
    if (refusal.isPresent()) {
      response.setHeader(HttpHeaders.RETRY_AFTER, refusal.get().seconds());
      return Page.of(PAGE, CurrentPage.busy(code), HttpStatus.TOO_MANY_REQUESTS);
    }
    return Page.of(PAGE, CurrentPage.of(code, SheetCode.read(code).flatMap(sheets::standing)));
  }
}
