package rungwise.web.provider;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.oauth2.client.authentication.OAuth2LoginAuthenticationToken;
import org.springframework.security.oauth2.client.endpoint.RestClientAuthorizationCodeTokenResponseClient;
import org.springframework.security.oauth2.client.oidc.authentication.OidcAuthorizationCodeAuthenticationProvider;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.ClientRegistrations;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationExchange;
import org.springframework.security.oauth2.core.oidc.OidcScopes;
import org.springframework.security.oauth2.core.oidc.user.DefaultOidcUser;
import org.springframework.security.oauth2.core.oidc.user.OidcUser;

/**
 * Talks to the identity provider. Its published settings are asked for when somebody first signs in
 * with it, so that this server starts, and passwords work, while it is down.
 */
final class Provider {

  private static final Logger LOG = LoggerFactory.getLogger(Provider.class);
  private static final String ID = "clinic";

  private final ProviderSettings settings;
  private final String returnTo;
  private final AtomicReference<@Nullable ClientRegistration> known = new AtomicReference<>();
  private final OidcAuthorizationCodeAuthenticationProvider exchanging =
      new OidcAuthorizationCodeAuthenticationProvider(
          new RestClientAuthorizationCodeTokenResponseClient(),
          request -> new DefaultOidcUser(List.of(), request.getIdToken()));

  /**
   * A provider that nobody has talked to yet.
   *
   * @param returnTo the address to which it sends people back
   */
  Provider(ProviderSettings settings, String returnTo) {
    this.settings = settings;
    this.returnTo = returnTo;
  }

  String name() {
    return settings.name();
  }

  /** How it is talked to; empty while it does not answer. */
  Optional<ClientRegistration> registration() {
    ClientRegistration found = known.get();
    if (found != null) {
      return Optional.of(found);
    }
    try {
      ClientRegistration asked = discovered();
      known.set(asked);
      return Optional.of(asked);
    } catch (RuntimeException unreachable) {
      LOG.error("The identity provider does not answer: {}", unreachable.getClass().getName());
      return Optional.empty();
    }
  }

  private ClientRegistration discovered() {
    return ClientRegistrations.fromIssuerLocation(settings.issuer().toString())
        .registrationId(ID)
        .clientId(settings.clientId())
        .clientSecret(settings.clientSecret())
        .scope(OidcScopes.OPENID, OidcScopes.PROFILE)
        .redirectUri(returnTo)
        .build();
  }

  /** The sign-in name that the provider gives for a code, once all its proofs were right. */
  Optional<String> signInName(
      ClientRegistration registration, OAuth2AuthorizationExchange exchange) {
    try {
      var answer =
          exchanging.authenticate(new OAuth2LoginAuthenticationToken(registration, exchange));
      return answer != null && answer.getPrincipal() instanceof OidcUser user
          ? Optional.ofNullable(user.getClaimAsString(settings.claim()))
          : Optional.empty();
    } catch (AuthenticationException notRight) {
      LOG.info("The identity provider's answer was refused: {}", notRight.getClass().getName());
      return Optional.empty();
    }
  }
}
