package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;
import rungwise.web.fault.FaultPage;
import rungwise.web.page.Templates;
import rungwise.web.session.Sessions;

/** What a person sees who may not do what he asked for, and the way on from there. */
final class Refusals implements AccessDeniedHandler, AuthenticationEntryPoint {

  private final Templates templates;
  private final ViewRecorder views;

  Refusals(Templates templates, ViewRecorder views) {
    this.templates = templates;
    this.views = views;
  }

  /** Nobody is signed in: reading leads to the sign-in page, a form is answered in words. */
  @Override
  public void commence(
      HttpServletRequest request, HttpServletResponse response, AuthenticationException reason)
      throws IOException {
    if (!HttpMethod.GET.matches(request.getMethod())) {
      FaultPage.STALE.write(templates, request, response);
      return;
    }
    String wanted = request.getRequestURI() + queryOf(request);
    String ended = Sessions.hasJustEnded(request) ? "&ended" : "";
    String next = URLEncoder.encode(wanted, StandardCharsets.UTF_8);
    response.sendRedirect("/sign-in?next=" + next + ended);
  }

  private static String queryOf(HttpServletRequest request) {
    return request.getQueryString() == null ? "" : "?" + request.getQueryString();
  }

  /** Somebody is signed in, or the form did not come from one of our open pages. */
  @Override
  public void handle(
      HttpServletRequest request, HttpServletResponse response, AccessDeniedException reason)
      throws IOException {
    List<HttpMethod> methods = Routes.methodsOf(request.getRequestURI());
    if (methods.isEmpty()) {
      FaultPage.of(HttpStatus.NOT_FOUND).write(templates, request, response);
    } else if (!methods.contains(Routes.asRoute(request.getMethod()))) {
      response.setHeader(
          HttpHeaders.ALLOW,
          methods.stream().map(HttpMethod::name).collect(Collectors.joining(", ")));
      FaultPage.of(HttpStatus.METHOD_NOT_ALLOWED).write(templates, request, response);
    } else if (reason instanceof CsrfException) {
      FaultPage.STALE.write(templates, request, response);
    } else {
      views.recordRefusal(request);
      FaultPage.of(HttpStatus.FORBIDDEN).write(templates, request, response);
    }
  }
}
