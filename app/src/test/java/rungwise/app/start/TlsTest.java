package rungwise.app.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
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
import javax.net.ssl.SSLHandshakeException;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.TemporaryFolder;

class TlsTest {

  private static final char[] STORE_PASSWORD = "for-this-test-only".toCharArray();

  private static final String EACH_128 = "TLS_ECDHE_ECDSA_WITH_AES_128_GCM_SHA256";
  private static final String EACH_256 = "TLS_ECDHE_ECDSA_WITH_AES_256_GCM_SHA384";

  /** Encrypted block by block, and authenticated apart from it: not recommended by RFC 9325. */
  private static final String WITHOUT_AUTHENTICATION = "TLS_ECDHE_ECDSA_WITH_AES_128_CBC_SHA256";

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

  private static SSLContext trusting(KeyStore store) throws Exception {
    KeyStore trusted = KeyStore.getInstance("PKCS12");
    trusted.load(null, null);
    trusted.setCertificateEntry("server", store.getCertificate("server"));
    var managers = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    managers.init(trusted);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, managers.getTrustManagers(), null);
    return context;
  }

  /** What such a browser and the server agree on: protocol and cipher suite. */
  private static String agreed(
      RunningServer server, KeyStore store, String protocol, String... suites) throws Exception {
    try (var socket =
        (SSLSocket)
            trusting(store)
                .getSocketFactory()
                .createSocket(InetAddress.getLoopbackAddress(), server.uri().getPort())) {
      socket.setEnabledProtocols(new String[] {protocol});
      socket.setEnabledCipherSuites(suites);
      socket.startHandshake();
      return socket.getSession().getProtocol() + " " + socket.getSession().getCipherSuite();
    }
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
          HttpClient.newBuilder()
              .sslContext(trusting(store))
              .build()
              .send(
                  HttpRequest.newBuilder(server.uri().resolve("/first-start")).build(),
                  BodyHandlers.ofString());

      assertThat(server.uri().getScheme()).isEqualTo("https");
      assertThat(page.statusCode()).isEqualTo(200);
      assertThat(page.headers().firstValue("Set-Cookie").orElseThrow())
          .startsWith("__Host-rungwise=")
          .contains("Secure", "HttpOnly", "SameSite=Lax", "Path=/");
      assertThat(page.headers().firstValue("Strict-Transport-Security"))
          .hasValue("max-age=31536000; includeSubDomains");
      assertThat(agreed(server, store, "TLSv1.3", "TLS_AES_128_GCM_SHA256"))
          .isEqualTo("TLSv1.3 TLS_AES_128_GCM_SHA256");
      assertThat(agreed(server, store, "TLSv1.2", EACH_128, EACH_256))
          .as("the stronger one, whatever the browser would rather have")
          .isEqualTo("TLSv1.2 " + EACH_256);
      assertThatThrownBy(() -> agreed(server, store, "TLSv1.2", WITHOUT_AUTHENTICATION))
          .isInstanceOf(SSLHandshakeException.class);
    }
  }
}
