package rungwise.app.clock;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class TimeSourceTest {

  private HttpServer server = anyFree();
  private String age = "";

  private static HttpServer anyFree() {
    try {
      return HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @BeforeEach
  void start() {
    server.createContext(
        "/",
        exchange -> {
          if (!age.isEmpty()) {
            exchange.getResponseHeaders().add("Age", age);
          }
          exchange.sendResponseHeaders(404, -1);
          exchange.close();
        });
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  private TimeSource source() {
    return TimeSource.at(URI.create("http://localhost:" + server.getAddress().getPort() + "/"));
  }

  @Test
  void the_date_of_any_answer_is_the_time_to_the_second() {
    assertThat(source().ask())
        .hasValueSatisfying(
            said ->
                assertThat(Duration.between(said, Instant.now()).abs())
                    .isLessThan(Duration.ofSeconds(10)));
  }

  @Test
  void an_answer_that_a_cache_has_kept_says_nothing() {
    age = "3600";

    assertThat(source().ask()).isEmpty();
  }

  @Test
  void who_does_not_answer_says_nothing() {
    TimeSource gone = source();
    server.stop(0);

    assertThat(gone.ask()).isEmpty();
  }
}
