package rungwise.web.fault;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.catalina.connector.ClientAbortException;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import rungwise.clinic.CannotKeep;
import rungwise.clinic.StillWanted.NobodyWaits;
import rungwise.clinic.soundness.Doubts;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.web.page.Templates;

/**
 * Catches what nobody else caught: the person gets a number and no detail, the log gets the same
 * number with the kinds of failure and where they arose. Messages of failures stay out of the log,
 * because they can hold what a person typed.
 */
final class Incidents implements Filter {

  private static final Logger LOG = LoggerFactory.getLogger(Incidents.class);
  private static final int BYTES_OF_NUMBER = 4;
  private static final int MOST_CAUSES = 8;
  private static final long MOST_BYTES_READ = FaultPages.MOST_KIB_READ * 1024L;

  private final SecureRandom random = new SecureRandom();
  private final Templates templates;
  private final Doubts doubts;

  Incidents(Templates templates, Doubts doubts) {
    this.templates = templates;
    this.doubts = doubts;
  }

  @Override
  public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
      throws IOException {
    if (request.getContentLengthLong() > MOST_BYTES_READ) {
      answer(FaultPage.TOO_LARGE, (HttpServletRequest) request, (HttpServletResponse) response);
      return;
    }
    try {
      chain.doFilter(request, response);
    } catch (Exception | LinkageError | StackOverflowError | NobodyWaits failure) {
      explain(failure, (HttpServletRequest) request, (HttpServletResponse) response);
    }
  }

  private void explain(Throwable failure, HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    if (isGone(failure)) {
      LOG.info("Whoever had asked is gone: the answer was not taken");
      if (!response.isCommitted()) {
        response.setStatus(HttpStatus.SERVICE_UNAVAILABLE.value());
      }
      return;
    }
    Optional<String> unkept = unkept(failure);
    if (unkept.isPresent()) {
      LOG.error("Nothing was saved: {}", unkept.get());
      answer(FaultPage.NOT_KEPT, request, response);
      return;
    }
    if (isUnreadable(failure)) {
      LOG.error("The record of a course cannot be read: run verify");
      answer(FaultPage.UNREADABLE, request, response);
      return;
    }
    OptionalInt refusal = refusal(failure);
    if (refusal.isPresent()) {
      boolean isTooLarge = refusal.getAsInt() == HttpStatus.CONTENT_TOO_LARGE.value();
      answer(
          isTooLarge ? FaultPage.TOO_LARGE : FaultPage.of(HttpStatus.BAD_REQUEST),
          request,
          response);
      return;
    }
    String number = nextNumber();
    LOG.error("Incident {}: {}", number, describe(failure));
    if (doubts.isToBlame(failure)) {
      LOG.error("Incident {}: the record is not as it was written: run verify", number);
      answer(FaultPage.damaged(number), request, response);
    } else {
      answer(number, response);
    }
  }

  /** Whether the browser closed the connection before the answer was there. */
  private static boolean isGone(Throwable failure) {
    return Stream.iterate(failure, Objects::nonNull, Throwable::getCause)
        .anyMatch(one -> one instanceof ClientAbortException || one instanceof NobodyWaits);
  }

  /** Why the record could not be written; the words are the program's own. */
  private static Optional<String> unkept(Throwable failure) {
    return Stream.iterate(failure, Objects::nonNull, Throwable::getCause)
        .filter(CannotKeep.class::isInstance)
        .map(Throwable::getMessage)
        .findFirst();
  }

  /** The status with which the server itself refuses to read a form, if it does. */
  private static OptionalInt refusal(Throwable failure) {
    return Stream.iterate(failure, Objects::nonNull, Throwable::getCause)
        .filter(InvalidParameterException.class::isInstance)
        .mapToInt(one -> ((InvalidParameterException) one).getErrorCode())
        .findFirst();
  }

  private static boolean isUnreadable(Throwable failure) {
    return Stream.iterate(failure, Objects::nonNull, Throwable::getCause)
        .anyMatch(UnreadableRecord.class::isInstance);
  }

  /** The frame of a page may rest on what cannot be read; then it goes without. */
  private void answer(FaultPage page, HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    if (response.isCommitted()) {
      return;
    }
    response.resetBuffer();
    try {
      page.write(templates, request, response);
    } catch (RuntimeException ofTheFrame) {
      response.resetBuffer();
      response.setStatus(page.status().value());
      templates.writeBare("fault/fault", Map.of("page", page), response);
    }
  }

  private void answer(String number, HttpServletResponse response) throws IOException {
    if (response.isCommitted()) {
      return;
    }
    response.resetBuffer();
    response.setStatus(HttpStatus.INTERNAL_SERVER_ERROR.value());
    templates.writeBare("fault/incident", Map.of("page", new IncidentPage(number)), response);
  }

  private String nextNumber() {
    byte[] bytes = new byte[BYTES_OF_NUMBER];
    random.nextBytes(bytes);
    return HexFormat.of().withUpperCase().formatHex(bytes);
  }

  private static String describe(Throwable failure) {
    return Stream.iterate(failure, Objects::nonNull, Throwable::getCause)
        .limit(MOST_CAUSES)
        .map(Incidents::describeOne)
        .collect(Collectors.joining("\n caused by "));
  }

  private static String describeOne(Throwable failure) {
    return failure.getClass().getName()
        + Arrays.stream(failure.getStackTrace())
            .map(frame -> "\n  at " + frame)
            .collect(Collectors.joining());
  }
}
