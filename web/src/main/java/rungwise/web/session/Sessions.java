package rungwise.web.session;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpRequestResponseHolder;
import org.springframework.security.web.context.SecurityContextRepository;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;
import rungwise.web.secrets.SteadyTime;

/**
 * Who is signed in. A session keeps the account's id and when it was opened and last used; the
 * account itself is asked for at each request, so that a change of roles or the end of an account
 * counts at once.
 */
public final class Sessions implements SecurityContextRepository {

  /** Request attribute that is set when this very request found its session too old. */
  private static final String JUST_ENDED = Sessions.class.getName() + ".justEnded";

  /** Names a request of a page that was left open: nobody may be there, so it is no use. */
  private static final String REFRESH = "Rungwise-Refresh";

  private static final String SIGNED_IN = Sessions.class.getName() + ".signedIn";
  private static final int LONGEST_BROWSER = 120;
  private static final String NOT_PLAIN = "[^\\x20-\\x7e]";

  private final People people;
  private final SessionLimits limits;
  private final InstantSource clock;
  private final SteadyTime steady;
  private final Map<String, HttpSession> open = new ConcurrentHashMap<>();

  public Sessions(People people, SessionLimits limits, InstantSource clock, SteadyTime steady) {
    this.people = people;
    this.limits = limits;
    this.clock = clock;
    this.steady = steady;
  }

  /** Starts a new session, under a new id, with nothing of the one before. */
  public void open(HttpServletRequest request, Account account) {
    close(request);
    forgetEnded();
    Instant now = clock.instant();
    HttpSession session = request.getSession(true);
    session.setMaxInactiveInterval(Math.toIntExact(limits.idle().toSeconds()));
    String handle = UUID.randomUUID().toString();
    session.setAttribute(
        SIGNED_IN,
        new OpenSession(
            handle,
            account.id(),
            now,
            now,
            new OpenSession.Age(steady.nanos(), steady.nanos()),
            request.getRemoteAddr(),
            browserOf(request)));
    open.put(handle, session);
  }

  private static String browserOf(HttpServletRequest request) {
    String named = Optional.ofNullable(request.getHeader(HttpHeaders.USER_AGENT)).orElse("");
    String plain = named.replaceAll(NOT_PLAIN, "");
    return plain.substring(0, Math.min(plain.length(), LONGEST_BROWSER));
  }

  public void close(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session != null) {
      end(session);
    }
  }

  private void end(HttpSession session) {
    try {
      signedIn(session).map(OpenSession::handle).ifPresent(open::remove);
      session.invalidate();
    } catch (IllegalStateException endedMeanwhile) {
      // Another request, or its age, has ended it: that is what was wanted.
      open.values().remove(session);
    }
  }

  /** The sessions that are open now, the one used last first. */
  public List<OpenSession> list() {
    forgetEnded();
    return open.values().stream()
        .flatMap(session -> signedIn(session).stream())
        .sorted(Comparator.comparing(OpenSession::lastSeen).reversed())
        .toList();
  }

  /** The session of a request, if somebody is signed in with it. */
  public static Optional<OpenSession> of(HttpServletRequest request) {
    return Optional.ofNullable(request.getSession(false)).flatMap(Sessions::signedIn);
  }

  /** Ends the sessions that a condition names; gives how many there were. */
  public int end(Predicate<OpenSession> named) {
    List<HttpSession> found =
        open.values().stream()
            .filter(session -> signedIn(session).filter(named).isPresent())
            .toList();
    found.forEach(this::end);
    return found.size();
  }

  private void forgetEnded() {
    open.values().stream()
        .filter(session -> signedIn(session).filter(this::isGood).isEmpty())
        .toList()
        .forEach(this::forget);
  }

  private void forget(HttpSession session) {
    end(session);
    open.values().remove(session);
  }

  private static Optional<OpenSession> signedIn(HttpSession session) {
    try {
      return session.getAttribute(SIGNED_IN) instanceof OpenSession found
          ? Optional.of(found)
          : Optional.empty();
    } catch (IllegalStateException ended) {
      return Optional.empty();
    }
  }

  /** Whether this request came with a session that had lasted too long. */
  public static boolean hasJustEnded(HttpServletRequest request) {
    return request.getAttribute(JUST_ENDED) != null;
  }

  /** The account a request acts as. */
  public static Optional<Account> accountNow() {
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
    Optional<OpenSession> signedIn = of(request);
    if (signedIn.isEmpty()) {
      return Optional.empty();
    }
    Optional<Account> account =
        signedIn
            .filter(this::isGood)
            .flatMap(one -> people.find(one.account()))
            .filter(Account::isActive);
    if (account.isEmpty()) {
      close(request);
      request.setAttribute(JUST_ENDED, true);
      return account;
    }
    if (request.getHeader(REFRESH) == null) {
      request
          .getSession(true)
          .setAttribute(SIGNED_IN, signedIn.get().seenAt(clock.instant(), steady.nanos()));
    }
    return account;
  }

  private boolean isGood(OpenSession session) {
    return steady.since(session.age().seen()).compareTo(limits.idle()) < 0
        && steady.since(session.age().opened()).compareTo(limits.whole()) < 0;
  }

  /** Whether a session is one of an account. */
  public static Predicate<OpenSession> isOf(AccountId account) {
    return session -> session.account().equals(account);
  }

  private static List<SimpleGrantedAuthority> authoritiesOf(Account account) {
    return account.roles().stream().map(role -> new SimpleGrantedAuthority(role.token())).toList();
  }

  @Override
  public boolean containsContext(HttpServletRequest request) {
    return of(request).isPresent();
  }

  @Override
  public void saveContext(
      SecurityContext context, HttpServletRequest request, HttpServletResponse response) {
    throw new UnsupportedOperationException("bug: sessions are opened by signing in only");
  }
}
