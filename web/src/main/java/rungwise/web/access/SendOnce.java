package rungwise.web.access;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.FlashMap;
import org.springframework.web.servlet.support.RequestContextUtils;
import org.springframework.web.servlet.support.SessionFlashMapManager;

/**
 * Records a clinical form once when it is sent twice, by a double click or by a browser that tries
 * again: the second one is answered as the first was. Forms of one session go one after the other.
 * A form that was refused is not kept: it is asked again.
 */
final class SendOnce implements Filter {

  private static final String COURSES = "/courses/";
  private static final String ROOM = "/room";

  private final Notices notices = new Notices();

  @Override
  public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
      throws IOException, ServletException {
    if (request instanceof HttpServletRequest http
        && response instanceof HttpServletResponse answer
        && isClinicalForm(http)) {
      HttpSession session = http.getSession(false);
      if (session != null) {
        once(SentForms.of(session), http, answer, chain);
        return;
      }
    }
    chain.doFilter(request, response);
  }

  private static boolean isClinicalForm(HttpServletRequest request) {
    String path = request.getRequestURI();
    return HttpMethod.POST.matches(request.getMethod())
        && (path.startsWith(COURSES) || path.startsWith(ROOM));
  }

  private void once(
      SentForms sent, HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws IOException, ServletException {
    String form = SentForms.digest(request);
    synchronized (sent) {
      Optional<SentForms.Answer> known = sent.answerTo(form);
      if (known.isPresent()) {
        notices.carryAgain(known.get().carried(), request, response);
        response.setStatus(HttpStatus.SEE_OTHER.value());
        response.setHeader(HttpHeaders.LOCATION, known.get().location());
        return;
      }
      chain.doFilter(request, response);
      String location = response.getHeader(HttpHeaders.LOCATION);
      if (response.getStatus() == HttpStatus.SEE_OTHER.value() && location != null) {
        sent.keep(form, new SentForms.Answer(location, carriedBy(request)));
      }
    }
  }

  private static FlashMap carriedBy(HttpServletRequest request) {
    return Optional.ofNullable(RequestContextUtils.getOutputFlashMap(request))
        .orElseGet(FlashMap::new);
  }

  /** What the next page is told, unless the first answer still waits to be shown there. */
  private static final class Notices extends SessionFlashMapManager {

    void carryAgain(FlashMap carried, HttpServletRequest request, HttpServletResponse response) {
      var waiting = retrieveFlashMaps(request);
      if (!carried.isEmpty() && (waiting == null || !waiting.contains(carried))) {
        saveOutputFlashMap(carried, request, response);
      }
    }
  }
}
