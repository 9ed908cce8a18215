package rungwise.web.access;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;

/**
 * Headers of every response, set before anything else runs, so that refusals and errors have them
 * too. Nothing outside this server is ever loaded, and nothing is kept by the browser.
 */
final class PageHeaders implements Filter {

  static final String CONTENT_SECURITY_POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self';"
          + " img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  private static final String STRICT_TRANSPORT = "max-age=31536000; includeSubDomains";

  @Override
  public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
      throws IOException, ServletException {
    if (response instanceof HttpServletResponse http) {
      http.setHeader("Content-Security-Policy", CONTENT_SECURITY_POLICY);
      http.setHeader("Cache-Control", "no-store");
      http.setHeader("X-Content-Type-Options", "nosniff");
      http.setHeader("Referrer-Policy", "no-referrer");
      http.setHeader("X-Frame-Options", "DENY");
      http.setHeader("Cross-Origin-Opener-Policy", "same-origin");
      http.setHeader("Cross-Origin-Resource-Policy", "same-origin");
      http.setHeader("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
      if (request.isSecure()) {
        http.setHeader("Strict-Transport-Security", STRICT_TRANSPORT);
      }
    }
    chain.doFilter(request, response);
  }
}
