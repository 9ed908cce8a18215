package rungwise.app.server;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.JWSSigner;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.PlainJWT;
import com.nimbusds.jwt.SignedJWT;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.URLDecoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rungwise.web.provider.ProviderSettings;

/**
 * Tokens that an identity provider must not be believed, one thing wrong in each (OpenID Connect
 * Core 1.0, 3.1.3.7). The provider is a bare one, which answers with whatever it is told to.
 */
class ForgedTokensTest {

  private static final String NAME = DemoClinic.MEMBERS.get(1).signInName();
  private static final String CLIENT = "rungwise";
  private static final String SECRET = "a-secret-between-two-servers-of-32-bytes";
  private static final String RETURN = "/sign-in/clinic/return";
  private static final Duration HOUR = Duration.ofHours(1);

  private static HttpServer provider;
  private static String issuer;
  private static RSAKey key;
  private static RSAKey stranger;
  private static Clinic clinic;

  /** The last token that was made, for {@link #answer}. */
  private static volatile String token = "";

  @BeforeAll
  static void start() throws Exception {
    key = new RSAKeyGenerator(2048).keyID("1").generate();
    stranger = new RSAKeyGenerator(2048).keyID("1").generate();
    provider = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    issuer = "http://localhost:" + provider.getAddress().getPort();
    provider.createContext("/", ForgedTokensTest::answer);
    provider.start();
    clinic =
        Clinic.withProvider(
            new ProviderSettings(
                URI.create(issuer), CLIENT, SECRET, "preferred_username", "There"));
  }

  @AfterAll
  static void stop() {
    clinic.close();
    provider.stop(0);
  }

  private static void answer(HttpExchange exchange) throws IOException {
    String path = exchange.getRequestURI().getPath();
    String body =
        switch (path) {
          case "/.well-known/openid-configuration" ->
              """
              {"issuer":"%1$s","authorization_endpoint":"%1$s/ask","token_endpoint":"%1$s/token",
               "jwks_uri":"%1$s/keys","subject_types_supported":["public"],
               "response_types_supported":["code"],
               "id_token_signing_alg_values_supported":["RS256"]}"""
                  .formatted(issuer);
          case "/keys" -> new JWKSet(key.toPublicJWK()).toString();
          case "/token" ->
              "{\"access_token\":\"never-sent-on\",\"token_type\":\"Bearer\",\"expires_in\":300,"
                  + "\"id_token\":\""
                  + token
                  + "\"}";
          default -> "{}";
        };
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    exchange.getResponseHeaders().add("Content-Type", "application/json");
    exchange.sendResponseHeaders(200, bytes.length);
    exchange.getResponseBody().write(bytes);
    exchange.close();
  }

  /** What the server asked the provider, by name. */
  private static Map<String, String> question(Visitor visitor) {
    String query = URI.create(Visitor.location(visitor.get("/sign-in/clinic"))).getRawQuery();
    return Arrays.stream(query.split("&", -1))
        .map(pair -> pair.split("=", 2))
        .collect(
            Collectors.toMap(
                pair -> pair[0], pair -> URLDecoder.decode(pair[1], StandardCharsets.UTF_8)));
  }

  private static JWTClaimsSet.Builder right(String nonce) {
    Instant now = Instant.now();
    return new JWTClaimsSet.Builder()
        .issuer(issuer)
        .subject("somebody")
        .audience(CLIENT)
        .issueTime(Date.from(now))
        .expirationTime(Date.from(now.plus(HOUR)))
        .claim("nonce", nonce)
        .claim("amr", List.of("mfa"))
        .claim("preferred_username", NAME);
  }

  private static String signed(JWTClaimsSet claims, JWSAlgorithm algorithm, JWSSigner signer)
      throws Exception {
    var made = new SignedJWT(new JWSHeader.Builder(algorithm).keyID("1").build(), claims);
    made.sign(signer);
    return made.serialize();
  }

  private static String signed(JWTClaimsSet claims) throws Exception {
    return signed(claims, JWSAlgorithm.RS256, new RSASSASigner(key));
  }

  /** A token for a nonce. */
  private interface Forger {
    String forge(String nonce) throws Exception;
  }

  /** Where a browser is led that comes back with a token. */
  private static String ledTo(Visitor visitor, Forger forger) throws Exception {
    Map<String, String> question = question(visitor);
    token = forger.forge(requireNonNull(question.get("nonce")));
    return Visitor.location(visitor.get(RETURN + "?code=any&state=" + question.get("state")));
  }

  private static final Map<String, Forger> FORGED =
      Map.ofEntries(
          Map.entry("no signature", nonce -> new PlainJWT(right(nonce).build()).serialize()),
          Map.entry(
              "signed by a stranger",
              nonce ->
                  signed(right(nonce).build(), JWSAlgorithm.RS256, new RSASSASigner(stranger))),
          Map.entry(
              "signed by another method of the same key",
              nonce -> signed(right(nonce).build(), JWSAlgorithm.PS256, new RSASSASigner(key))),
          Map.entry(
              "signed by the shared secret",
              nonce -> signed(right(nonce).build(), JWSAlgorithm.HS256, new MACSigner(SECRET))),
          Map.entry(
              "changed after it was signed",
              nonce -> {
                String[] parts = signed(right(nonce).build()).split("\\.", -1);
                String other = signed(right(nonce).subject("other").build()).split("\\.", -1)[1];
                return parts[0] + "." + other + "." + parts[2];
              }),
          Map.entry(
              "over",
              nonce ->
                  signed(
                      right(nonce)
                          .issueTime(Date.from(Instant.now().minus(HOUR.multipliedBy(2))))
                          .expirationTime(Date.from(Instant.now().minus(HOUR)))
                          .build())),
          Map.entry("without an end", nonce -> signed(right(nonce).expirationTime(null).build())),
          Map.entry(
              "of another issuer",
              nonce -> signed(right(nonce).issuer("https://elsewhere.example").build())),
          Map.entry("for another program", nonce -> signed(right(nonce).audience("other").build())),
          Map.entry("for nobody", nonce -> signed(right(nonce).audience(List.of()).build())),
          Map.entry("of another question", nonce -> signed(right("another nonce").build())),
          Map.entry("of no question", nonce -> signed(right(nonce).claim("nonce", null).build())),
          Map.entry("of nobody", nonce -> signed(right(nonce).subject(null).build())),
          Map.entry("no token", nonce -> "typed"));

  @Test
  void a_token_with_anything_wrong_in_it_signs_nobody_in() throws Exception {
    for (Map.Entry<String, Forger> forged : FORGED.entrySet()) {
      Visitor visitor = clinic.visitor();

      assertThat(ledTo(visitor, forged.getValue()))
          .as(forged.getKey())
          .isEqualTo("/sign-in?refused");
      assertThat(visitor.get("/").statusCode()).as(forged.getKey()).isEqualTo(302);
    }
  }

  @Test
  void the_right_one_signs_in_once_and_no_token_reaches_the_browser() throws Exception {
    Visitor visitor = clinic.visitor();

    assertThat(ledTo(visitor, nonce -> signed(right(nonce).build()))).isEqualTo("/");
    HttpResponse<String> page = visitor.get("/");

    assertThat(page.statusCode()).isEqualTo(200);
    assertThat(page.body()).doesNotContain("never-sent-on", token);
    assertThat(page.headers().map().toString()).doesNotContain("never-sent-on", token);
    assertThat(Visitor.location(visitor.get(RETURN + "?code=any&state=again")))
        .isEqualTo("/sign-in?refused");
  }

  @Test
  void whatever_a_provider_says_of_two_factors_a_second_one_is_asked_for_here() throws Exception {
    Visitor visitor = clinic.visitor();
    ledTo(visitor, nonce -> signed(right(nonce).build()));
    String protocols = visitor.get("/protocols").body();
    String sign = protocols.replaceAll("(?s).*?action=\"(/protocols/[^\"]+/sign)\".*", "$1");

    HttpResponse<String> answer = visitor.post("/protocols", sign, Map.of());

    assertThat(answer.statusCode()).isEqualTo(403);
    assertThat(answer.body()).contains("second factor");
  }
}
