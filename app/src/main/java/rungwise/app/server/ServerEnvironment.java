package rungwise.app.server;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.MutablePropertySources;
import org.springframework.web.context.support.StandardServletEnvironment;
import rungwise.web.fault.FaultPages;

/**
 * All settings of the server, as the verb was given them: neither a file in the current folder nor
 * a variable that the verb does not name can change how pages are protected.
 */
final class ServerEnvironment {

  /** Those of TLS 1.3 (RFC 8446, B.4), then those that RFC 9325, 4.2, recommends for TLS 1.2. */
  private static final List<String> CIPHER_SUITES =
      List.of(
          "TLS_AES_256_GCM_SHA384",
          "TLS_CHACHA20_POLY1305_SHA256",
          "TLS_AES_128_GCM_SHA256",
          "TLS_ECDHE_ECDSA_WITH_AES_256_GCM_SHA384",
          "TLS_ECDHE_RSA_WITH_AES_256_GCM_SHA384",
          "TLS_ECDHE_ECDSA_WITH_AES_128_GCM_SHA256",
          "TLS_ECDHE_RSA_WITH_AES_128_GCM_SHA256");

  private ServerEnvironment() {}

  static ConfigurableEnvironment of(ServerSettings settings) {
    Map<String, Object> values = new HashMap<>();
    values.put("spring.config.location", "optional:classpath:/rungwise/app/no-such-folder/");
    values.put("spring.main.banner-mode", "off");
    values.put("spring.main.log-startup-info", "false");
    values.put("spring.threads.virtual.enabled", "true");
    values.put("server.address", settings.address().getHostAddress());
    values.put("server.port", settings.port());
    values.put("server.shutdown", "graceful");
    values.put("spring.lifecycle.timeout-per-shutdown-phase", "5s");
    values.put("server.tomcat.max-http-form-post-size", FaultPages.MOST_KIB_READ + "KB");
    values.put("server.tomcat.max-swallow-size", "16MB");
    values.put("server.tomcat.use-relative-redirects", "true");
    values.put("server.servlet.session.timeout", "30m");
    values.put("server.servlet.session.tracking-modes", "cookie");
    values.put("server.servlet.session.cookie.name", cookieName(settings));
    values.put("server.servlet.session.cookie.http-only", "true");
    values.put("server.servlet.session.cookie.same-site", "lax");
    values.put("server.servlet.session.cookie.secure", settings.tls().isPresent());
    settings
        .tls()
        .ifPresent(
            tls -> {
              values.put("server.ssl.certificate", tls.certificate().toUri().toString());
              values.put("server.ssl.certificate-private-key", tls.key().toUri().toString());
              values.put("server.ssl.enabled-protocols", "TLSv1.3,TLSv1.2");
              values.put("server.ssl.ciphers", String.join(",", CIPHER_SUITES));
            });
    return new Closed(values);
  }

  /** Under TLS the browser itself refuses the cookie if it is not from this very host. */
  private static String cookieName(ServerSettings settings) {
    return settings.tls().isPresent() ? "__Host-rungwise" : "rungwise";
  }

  /** An environment of the given values, without those of the machine. */
  private static final class Closed extends StandardServletEnvironment {
    Closed(Map<String, Object> values) {
      getPropertySources().addFirst(new MapPropertySource("rungwise", values));
    }

    @Override
    protected void customizePropertySources(MutablePropertySources sources) {
      // Nothing of the machine: see above.
    }
  }
}
