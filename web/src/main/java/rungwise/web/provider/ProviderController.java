package rungwise.web.provider;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.InMemoryClientRegistrationRepository;
import org.springframework.security.oauth2.client.web.DefaultOAuth2AuthorizationRequestResolver;
import org.springframework.security.oauth2.client.web.OAuth2AuthorizationRequestCustomizers;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationExchange;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationRequest;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationResponse;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.web.access.Routes;
import rungwise.web.page.Page;
import rungwise.web.session.Sessions;

/** Sends a person to the clinic's identity provider, and takes him or her back. */
@Controller
final class ProviderController {

  static final String RETURN = "/sign-in/clinic/return";

  private static final Logger LOG = LoggerFactory.getLogger(ProviderController.class);
  private static final String BEGUN = ProviderController.class.getName() + ".begun";
  private static final String REFUSED = "/sign-in?refused";

  private final Optional<Provider> provider;
  private final People people;
  private final Sessions sessions;

  ProviderController(Optional<Provider> provider, People people, Sessions sessions) {
    this.provider = provider;
    this.people = people;
    this.sessions = sessions;
  }

  /** What a session has begun: the question that was sent, and the page that was wanted. */
  private record Begun(OAuth2AuthorizationRequest question, String next) {}

  @GetMapping("/sign-in/clinic")
  ModelAndView begin(@RequestParam(defaultValue = "/") String next, HttpServletRequest request) {
    Optional<ClientRegistration> registration = known().registration();
    if (registration.isEmpty()) {
      return Page.redirect(REFUSED);
    }
    OAuth2AuthorizationRequest question = question(registration.get(), request);
    request
        .getSession(true)
        .setAttribute(BEGUN, new Begun(question, Routes.isOwnPage(next) ? next : "/"));
    return Page.redirect(question.getAuthorizationRequestUri());
  }

  private Provider known() {
    return provider.orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  /** With a state, a nonce and a code challenge (RFC 7636), each new. */
  private static OAuth2AuthorizationRequest question(
      ClientRegistration registration, HttpServletRequest request) {
    var resolver =
        new DefaultOAuth2AuthorizationRequestResolver(
            new InMemoryClientRegistrationRepository(Map.of(id(registration), registration)));
    resolver.setAuthorizationRequestCustomizer(OAuth2AuthorizationRequestCustomizers.withPkce());
    OAuth2AuthorizationRequest question = resolver.resolve(request, id(registration));
    if (question == null) {
      throw new IllegalStateException("bug: no question for a registration that is there");
    }
    return question;
  }

  private static String id(ClientRegistration registration) {
    return registration.getRegistrationId();
  }

  @GetMapping(RETURN)
  ModelAndView end(
      @RequestParam(defaultValue = "") String code,
      @RequestParam(defaultValue = "") String state,
      HttpServletRequest request) {
    Provider asked = known();
    Optional<Begun> begun = take(request).filter(one -> state.equals(one.question().getState()));
    Optional<Account> account =
        begun
            .filter(one -> !code.isEmpty())
            .flatMap(one -> signInName(asked, one.question(), code, state))
            .flatMap(name -> people.signInByProvider(name.strip().toLowerCase(Locale.ROOT)));
    if (account.isEmpty()) {
      LOG.info("Sign-in by the identity provider refused");
      return Page.redirect(REFUSED);
    }
    sessions.open(request, account.get());
    LOG.info("Signed in by the identity provider {}", account.get().id());
    return Page.redirect(begun.get().next());
  }

  private static Optional<Begun> take(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session == null || !(session.getAttribute(BEGUN) instanceof Begun begun)) {
      return Optional.empty();
    }
    session.removeAttribute(BEGUN);
    return Optional.of(begun);
  }

  private static Optional<String> signInName(
      Provider asked, OAuth2AuthorizationRequest question, String code, String state) {
    var answer =
        OAuth2AuthorizationResponse.success(code)
            .redirectUri(question.getRedirectUri())
            .state(state)
            .build();
    return asked
        .registration()
        .flatMap(
            registration ->
                asked.signInName(registration, new OAuth2AuthorizationExchange(question, answer)));
  }
}
