package rungwise.checks.provider;

import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.source.ImmutableJWKSet;
import com.nimbusds.jose.jwk.source.JWKSource;
import com.nimbusds.jose.proc.SecurityContext;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.NoSuchAlgorithmException;
import java.security.interfaces.RSAPublicKey;
import java.util.Map;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.tomcat.autoconfigure.servlet.TomcatServletWebServerAutoConfiguration;
import org.springframework.boot.web.servlet.DelegatingFilterProxyRegistrationBean;
import org.springframework.boot.webmvc.autoconfigure.DispatcherServletAutoConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.StandardEnvironment;
import org.springframework.security.config.Customizer;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configuration.EnableWebSecurity;
import org.springframework.security.config.annotation.web.configuration.OAuth2AuthorizationServerConfiguration;
import org.springframework.security.core.userdetails.User;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.oauth2.core.AuthorizationGrantType;
import org.springframework.security.oauth2.core.ClientAuthenticationMethod;
import org.springframework.security.oauth2.core.oidc.OidcScopes;
import org.springframework.security.oauth2.core.oidc.endpoint.OidcParameterNames;
import org.springframework.security.oauth2.jwt.JwtDecoder;
import org.springframework.security.oauth2.server.authorization.client.InMemoryRegisteredClientRepository;
import org.springframework.security.oauth2.server.authorization.client.RegisteredClient;
import org.springframework.security.oauth2.server.authorization.client.RegisteredClientRepository;
import org.springframework.security.oauth2.server.authorization.settings.AuthorizationServerSettings;
import org.springframework.security.oauth2.server.authorization.settings.ClientSettings;
import org.springframework.security.oauth2.server.authorization.token.JwtEncodingContext;
import org.springframework.security.oauth2.server.authorization.token.OAuth2TokenCustomizer;
import org.springframework.security.provisioning.InMemoryUserDetailsManager;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.web.servlet.config.annotation.EnableWebMvc;

/**
 * An authorization server of the same family as the client, but of its own code: it asks for PKCE,
 * and says of each person the name under which he or she signed in there.
 */
final class ClinicProvider implements AutoCloseable {

  static final String CLIENT = "rungwise";
  static final String SECRET = "a secret between two servers";
  static final String PASSWORD = "their own long password";

  /** Known there under the name of an account here. */
  static final String KNOWN = "tobias";

  /** Known there, and nobody here. */
  static final String STRANGER = "oren.vale";

  private static final String RETURN = "returnAddress";

  private final ConfigurableApplicationContext context;
  private final String issuer;

  private ClinicProvider(ConfigurableApplicationContext context, String issuer) {
    this.context = context;
    this.issuer = issuer;
  }

  /** Starts one that sends people back to an address. */
  static ClinicProvider start(String returnAddress) {
    int port = freePort();
    String issuer = "http://localhost:" + port;
    var application = new SpringApplication(Wiring.class);
    application.setWebApplicationType(WebApplicationType.SERVLET);
    var environment = new StandardEnvironment();
    environment
        .getPropertySources()
        .addFirst(
            new MapPropertySource(
                "provider",
                Map.of(
                    "server.port",
                    port,
                    "server.address",
                    "127.0.0.1",
                    "server.servlet.session.cookie.name",
                    "provider",
                    "spring.main.banner-mode",
                    "off",
                    RETURN,
                    returnAddress,
                    "issuer",
                    issuer)));
    application.setEnvironment(environment);
    return new ClinicProvider(application.run(), issuer);
  }

  /** A port that nobody listens on now. */
  static int freePort() {
    try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  String issuer() {
    return issuer;
  }

  @Override
  public void close() {
    context.close();
  }

  @Configuration(proxyBeanMethods = false)
  @EnableWebMvc
  @EnableWebSecurity
  @ImportAutoConfiguration({
    TomcatServletWebServerAutoConfiguration.class,
    DispatcherServletAutoConfiguration.class
  })
  static class Wiring {

    @Bean
    SecurityFilterChain everything(HttpSecurity http) {
      return http.oauth2AuthorizationServer(server -> server.oidc(Customizer.withDefaults()))
          .authorizeHttpRequests(requests -> requests.anyRequest().authenticated())
          .formLogin(Customizer.withDefaults())
          .build();
    }

    @Bean
    DelegatingFilterProxyRegistrationBean securityFilter() {
      return new DelegatingFilterProxyRegistrationBean("springSecurityFilterChain");
    }

    @Bean
    UserDetailsService people() {
      return new InMemoryUserDetailsManager(
          User.withUsername(KNOWN).password("{noop}" + PASSWORD).roles("STAFF").build(),
          User.withUsername(STRANGER).password("{noop}" + PASSWORD).roles("STAFF").build());
    }

    @Bean
    RegisteredClientRepository clients(@Value("${returnAddress}") String address) {
      return new InMemoryRegisteredClientRepository(
          RegisteredClient.withId("1")
              .clientId(CLIENT)
              .clientSecret("{noop}" + SECRET)
              .clientAuthenticationMethod(ClientAuthenticationMethod.CLIENT_SECRET_BASIC)
              .authorizationGrantType(AuthorizationGrantType.AUTHORIZATION_CODE)
              .redirectUri(address)
              .scope(OidcScopes.OPENID)
              .scope(OidcScopes.PROFILE)
              .clientSettings(ClientSettings.builder().requireProofKey(true).build())
              .build());
    }

    @Bean
    AuthorizationServerSettings settings(@Value("${issuer}") String issuer) {
      return AuthorizationServerSettings.builder().issuer(issuer).build();
    }

    @Bean
    OAuth2TokenCustomizer<JwtEncodingContext> names() {
      return context -> {
        if (context.getTokenType().getValue().equals(OidcParameterNames.ID_TOKEN)) {
          context.getClaims().claim("preferred_username", context.getPrincipal().getName());
        }
      };
    }

    @Bean
    JwtDecoder decoder(JWKSource<SecurityContext> keys) {
      return OAuth2AuthorizationServerConfiguration.jwtDecoder(keys);
    }

    @Bean
    JWKSource<SecurityContext> keys() throws NoSuchAlgorithmException {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA");
      generator.initialize(2048);
      KeyPair pair = generator.generateKeyPair();
      var key =
          new RSAKey.Builder((RSAPublicKey) pair.getPublic())
              .privateKey(pair.getPrivate())
              .keyID("1")
              .build();
      return new ImmutableJWKSet<>(new JWKSet(key));
    }
  }
}
