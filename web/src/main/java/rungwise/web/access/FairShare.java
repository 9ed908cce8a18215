package rungwise.web.access;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import rungwise.clinic.people.Account;
import rungwise.web.fault.FaultPage;
import rungwise.web.page.Templates;
import rungwise.web.session.Sessions;

/**
 * Nobody who reloads without a pause holds up the others. Only reading is held back: a report and
 * every other form is taken.
 */
final class FairShare implements Filter {

  private static final String SECONDS = "30";

  private final Shares shares;
  private final Templates templates;

  FairShare(Shares shares, Templates templates) {
    this.shares = shares;
    this.templates = templates;
  }

  @Override
  public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
      throws IOException, ServletException {
    Optional<Account> account = Sessions.accountNow();
    if (account.isEmpty()
        || !(request instanceof HttpServletRequest asked)
        || !(response instanceof HttpServletResponse answer)
        || !Routes.isRead(asked)) {
      chain.doFilter(request, response);
      return;
    }
    if (!shares.mayAsk(account.get().id())) {
      answer.setHeader(HttpHeaders.RETRY_AFTER, SECONDS);
      FaultPage.TOO_MANY.write(templates, asked, answer);
      return;
    }
    long begun = shares.begin();
    try {
      chain.doFilter(request, response);
    } finally {
      shares.end(account.get().id(), begun);
    }
  }
}
