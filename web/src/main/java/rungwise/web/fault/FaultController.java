package rungwise.web.fault;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import rungwise.web.page.Page;

/** Answers in place of the server's own error pages; reached from inside only. */
@Controller
final class FaultController {

  static final String PATH = "/fault";

  @RequestMapping(PATH)
  ModelAndView show(HttpServletRequest request) {
    HttpStatus status =
        Optional.ofNullable(request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE))
            .map(code -> HttpStatus.resolve((Integer) code))
            .orElse(HttpStatus.NOT_FOUND);
    return Page.of("fault/fault", FaultPage.of(status), status);
  }
}
