package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpMethod;
import org.springframework.security.web.csrf.CsrfToken;
import rungwise.clinic.people.Account;
import rungwise.clinic.soundness.Doubts;
import rungwise.web.clock.ClockWords;
import rungwise.web.page.Assets;
import rungwise.web.page.Frame;
import rungwise.web.page.Frames;
import rungwise.web.session.Sessions;

/** The frame of a page: links only to where the person signed in may go. */
final class PageFrames implements Frames {

  private static final String SEARCH = "/men";

  private record Place(String path, String word) {}

  private static final List<Place> PLACES =
      List.of(
          new Place("/", "Today"),
          new Place("/room", "Under observation"),
          new Place("/preparations", "Preparations"),
          new Place("/syringes", "Syringes"),
          new Place("/dose", "Dose"),
          new Place("/protocols", "Protocols"),
          new Place("/people", "People"),
          new Place("/sessions", "Signed in now"),
          new Place("/views", "Who looked"),
          new Place("/access-taken", "Access taken"),
          new Place("/audit", "Audit trail"),
          new Place("/record-faults", "Faults of the record"));

  private final ClinicSign clinic;
  private final Assets assets;
  private final ClockWords clock;
  private final Doubts doubts;

  PageFrames(ClinicSign clinic, Assets assets, ClockWords clock, Doubts doubts) {
    this.clinic = clinic;
    this.assets = assets;
    this.clock = clock;
    this.doubts = doubts;
  }

  @Override
  public Frame frameOf(HttpServletRequest request) {
    Optional<Account> account = Sessions.accountNow();
    return new Frame(
        clinic.name(),
        account.map(Account::fullName).orElse(""),
        account.map(who -> linksOf(who, request.getRequestURI())).orElse(List.of()),
        account.filter(who -> isOpenTo(who, SEARCH)).isPresent(),
        csrfOf(request),
        assets.stylesheet(),
        clock.notice(account.isPresent(), assets.clockScript()),
        account.isPresent() ? doubts.notice() : List.of(),
        account.isPresent()
            ? new Frame.Paper(clock.asOf(), assets.paperScript())
            : Frame.Paper.NONE);
  }

  private static List<Frame.Link> linksOf(Account account, String here) {
    return PLACES.stream()
        .filter(place -> isOpenTo(account, place.path()))
        .map(place -> new Frame.Link(place.path(), place.word(), isWithin(place.path(), here)))
        .toList();
  }

  private static boolean isOpenTo(Account account, String path) {
    return Routes.TABLE.stream()
        .filter(route -> route.method().equals(HttpMethod.GET) && route.path().equals(path))
        .anyMatch(route -> route.access().admits(account));
  }

  private static boolean isWithin(String place, String here) {
    return here.equals(place) || (!place.equals("/") && here.startsWith(place + "/"));
  }

  private static Frame.Csrf csrfOf(HttpServletRequest request) {
    return request.getAttribute(CsrfToken.class.getName()) instanceof CsrfToken token
        ? new Frame.Csrf(token.getParameterName(), token.getToken())
        : Frame.Csrf.NONE;
  }
}
