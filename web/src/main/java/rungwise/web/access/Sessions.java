package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpRequestResponseHolder;
import org.springframework.security.web.context.SecurityContextRepository;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;

/**
 * Who is signed in. A session keeps only the account's id and two instants; the account itself is
 * asked for at each request, so that a change of roles or the end of an account counts at once.
 */
final class Sessions implements SecurityContextRepository {

  /** Request attribute that is set when this very request found its session too old. */
  private static final String JUST_ENDED = Sessions.class.getName() + ".justEnded";

  private static final String SIGNED_IN = Sessions.class.getName() + ".signedIn";

  private final People people;
  private final SessionLimits limits;
  private final InstantSource clock;

  Sessions(People people, SessionLimits limits, InstantSource clock) {
    this.people = people;
    this.limits = limits;
    this.clock = clock;
  }

  /** What a session knows. */
  private record SignedIn(AccountId account, Instant since, Instant lastSeen) {}

  /** Starts a new session, under a new id, with nothing of the one before. */
  void open(HttpServletRequest request, Account account) {
    close(request);
    Instant now = clock.instant();
    HttpSession session = request.getSession(true);
    session.setMaxInactiveInterval(Math.toIntExact(limits.idle().toSeconds()));
    session.setAttribute(SIGNED_IN, new SignedIn(account.id(), now, now));
  }

  void close(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session != null) {
      session.invalidate();
    }
  }

  /** Whether this request came with a session that had lasted too long. */
  static boolean hasJustEnded(HttpServletRequest request) {
    return request.getAttribute(JUST_ENDED) != null;
  }

  /** The account a request acts as. */
  static Optional<Account> accountNow() {
    return Optional.ofNullable(SecurityContextHolder.getContext().getAuthentication())
        .map(authentication -> authentication.getPrincipal())
        .filter(Account.class::isInstance)
        .map(Account.class::cast);
  }

  @Override
  @SuppressWarnings("deprecation") // the interface still asks for it
  public SecurityContext loadContext(HttpRequestResponseHolder holder) {
    SecurityContext context = SecurityContextHolder.createEmptyContext();
    find(holder.getRequest())
        .ifPresent(
            account ->
                context.setAuthentication(
                    UsernamePasswordAuthenticationToken.authenticated(
                        account, null, authoritiesOf(account))));
    return context;
  }

  private Optional<Account> find(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session == null || !(session.getAttribute(SIGNED_IN) instanceof SignedIn signedIn)) {
      return Optional.empty();
    }
    Instant now = clock.instant();
    boolean isFresh = now.isBefore(signedIn.lastSeen().plus(limits.idle()));
    boolean isYoung = now.isBefore(signedIn.since().plus(limits.whole()));
    Optional<Account> account = people.find(signedIn.account()).filter(Account::isActive);
    if (!isFresh || !isYoung || account.isEmpty()) {
      session.invalidate();
      request.setAttribute(JUST_ENDED, true);
      return Optional.empty();
    }
    session.setAttribute(SIGNED_IN, new SignedIn(signedIn.account(), signedIn.since(), now));
    return account;
  }

  private static List<SimpleGrantedAuthority> authoritiesOf(Account account) {
    return account.roles().stream().map(role -> new SimpleGrantedAuthority(role.token())).toList();
  }

  @Override
  public boolean containsContext(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    return session != null && session.getAttribute(SIGNED_IN) != null;
  }

  @Override
  public void saveContext(
      SecurityContext context, HttpServletRequest request, HttpServletResponse response) {
    throw new UnsupportedOperationException("bug: sessions are opened by signing in only");
  }
}
