package rungwise.app.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.TemporaryFolder;

class TlsTest {

  private static final char[] STORE_PASSWORD = "for-this-test-only".toCharArray();

  @TempDir private Path folder = Path.of("");

  /** A key pair for 127.0.0.1, made by the JDK's own tool. */
  private KeyStore keyPair() throws Exception {
    Path file = folder.resolve("store.p12");
    int status =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair",
                "-alias",
                "server",
                "-keyalg",
                "EC",
                "-dname",
                "CN=127.0.0.1",
                "-ext",
                "san=ip:127.0.0.1",
                "-storetype",
                "PKCS12",
                "-storepass",
                new String(STORE_PASSWORD),
                "-keystore",
                file.toString())
            .inheritIO()
            .start()
            .waitFor();
    assertThat(status).isZero();
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(file)) {
      store.load(in, STORE_PASSWORD);
    }
    return store;
  }

  private Path pem(String name, String kind, byte[] content) throws IOException {
    String text = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(content);
    return Files.writeString(
        folder.resolve(name),
        "-----BEGIN " + kind + "-----\n" + text + "\n-----END " + kind + "-----\n");
  }

  private static HttpClient trusting(KeyStore store) throws Exception {
    KeyStore trusted = KeyStore.getInstance("PKCS12");
    trusted.load(null, null);
    trusted.setCertificateEntry("server", store.getCertificate("server"));
    var managers = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    managers.init(trusted);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, managers.getTrustManagers(), null);
    return HttpClient.newBuilder().sslContext(context).build();
  }

  @Test
  void with_a_certificate_pages_are_https_and_the_cookie_never_leaves_it() throws Exception {
    KeyStore store = keyPair();
    var tls =
        new ServerSettings.Tls(
            pem("certificate.pem", "CERTIFICATE", store.getCertificate("server").getEncoded()),
            pem("key.pem", "PRIVATE KEY", store.getKey("server", STORE_PASSWORD).getEncoded()));
    ServerSettings settings =
        ServerSettings.of(
            ServerSettings.LOOPBACK, 0, Optional.of(tls), "Northgate", ZoneOffset.UTC);
    try (TemporaryFolder data = TemporaryFolder.make();
        OpenClinic clinic = OpenClinic.in(data.path(), InstantSource.system());
        RunningServer server = RunningServer.start(settings, clinic)) {

      HttpResponse<String> page =
          trusting(store)
              .send(
                  HttpRequest.newBuilder(server.uri().resolve("/first-start")).build(),
                  BodyHandlers.ofString());

      assertThat(server.uri().getScheme()).isEqualTo("https");
      assertThat(page.statusCode()).isEqualTo(200);
      assertThat(page.headers().firstValue("Set-Cookie").orElseThrow())
          .startsWith("__Host-rungwise=")
          .contains("Secure", "HttpOnly", "SameSite=Lax", "Path=/");
      assertThat(page.headers().firstValue("Strict-Transport-Security")).isPresent();
    }
  }
}
