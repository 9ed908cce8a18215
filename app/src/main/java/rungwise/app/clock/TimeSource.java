package rungwise.app.clock;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/**
 * Another machine that says what time it is: the Date of its answer to a request for the head of a
 * page (RFC 9110, 6.6.1), to the second. An answer that a cache has kept says nothing.
 */
record TimeSource(URI address, HttpClient client) {

  private static final Duration LONGEST = Duration.ofSeconds(5);

  static TimeSource at(URI address) {
    return new TimeSource(
        address,
        HttpClient.newBuilder()
            .connectTimeout(LONGEST)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build());
  }

  /** What it says now; empty if it does not answer in time. */
  Optional<Instant> ask() {
    HttpRequest request =
        HttpRequest.newBuilder(address)
            .HEAD()
            .timeout(LONGEST)
            .header("Cache-Control", "no-cache")
            .build();
    try {
      HttpResponse<Void> answer = client.send(request, HttpResponse.BodyHandlers.discarding());
      return answer.headers().firstValue("Age").isPresent()
          ? Optional.empty()
          : answer.headers().firstValue("Date").flatMap(TimeSource::read);
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  private static Optional<Instant> read(String date) {
    try {
      return Optional.of(Instant.from(DateTimeFormatter.RFC_1123_DATE_TIME.parse(date)));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
