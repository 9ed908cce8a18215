package rungwise.app.server;

import java.net.BindException;
import java.net.Inet6Address;
import java.net.URI;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.web.server.PortInUseException;
import org.springframework.boot.web.server.servlet.context.ServletWebServerApplicationContext;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ApplicationListener;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.support.GenericApplicationContext;
import rungwise.clinic.clock.ClockWatch;
import rungwise.web.provider.ProviderSettings;

/** A server that answers until it is closed or the process is told to end. */
public final class RunningServer implements AutoCloseable {

  private final ServletWebServerApplicationContext context;
  private final URI uri;
  private final CountDownLatch ended;

  private RunningServer(ServletWebServerApplicationContext context, URI uri, CountDownLatch ended) {
    this.context = context;
    this.uri = uri;
    this.ended = ended;
  }

  /**
   * Starts a server on an opened clinic, which it closes with itself.
   *
   * @throws WrongUse if the address or the certificate cannot be used
   */
  public static RunningServer start(ServerSettings settings, OpenClinic clinic) {
    var ended = new CountDownLatch(1);
    var application = new SpringApplication(ServerWiring.class);
    application.setWebApplicationType(WebApplicationType.SERVLET);
    application.setEnvironment(ServerEnvironment.of(settings));
    application.addInitializers(given(settings, clinic));
    application.addListeners((ApplicationListener<ContextClosedEvent>) e -> ended.countDown());
    try {
      var context = (ServletWebServerApplicationContext) application.run();
      return new RunningServer(context, uriOf(settings, portOf(context)), ended);
    } catch (RuntimeException failure) {
      clinic.close();
      throw explain(settings, failure);
    }
  }

  private static ApplicationContextInitializer<GenericApplicationContext> given(
      ServerSettings settings, OpenClinic clinic) {
    return context -> {
      context.registerBean(OpenClinic.class, () -> clinic);
      context.registerBean(ServerSettings.class, () -> settings);
      settings
          .provider()
          .ifPresent(given -> context.registerBean(ProviderSettings.class, () -> given));
    };
  }

  private static int portOf(ServletWebServerApplicationContext context) {
    return Objects.requireNonNull(context.getWebServer(), "bug: no web server").getPort();
  }

  private static URI uriOf(ServerSettings settings, int port) {
    String scheme = settings.tls().isPresent() ? "https" : "http";
    String host = settings.address().getHostAddress();
    String quoted = settings.address() instanceof Inet6Address ? "[" + host + "]" : host;
    return URI.create(scheme + "://" + quoted + ":" + port + "/");
  }

  private static RuntimeException explain(ServerSettings settings, RuntimeException failure) {
    boolean isTaken =
        Stream.iterate((Throwable) failure, Objects::nonNull, Throwable::getCause)
            .anyMatch(c -> c instanceof PortInUseException || c instanceof BindException);
    String where = settings.address().getHostAddress() + " port " + settings.port();
    if (isTaken) {
      return new WrongUse(
          "The server cannot listen on "
              + where
              + ": another program does, or the address is not this machine's. Stop the other"
              + " program, or give another --port or --address.",
          failure);
    }
    return settings
        .tls()
        .<RuntimeException>map(
            files ->
                new WrongUse(
                    "The server did not start with the certificate "
                        + files.certificate()
                        + " and the key "
                        + files.key()
                        + ": both must be PEM files that belong together, the key without a"
                        + " password.",
                    failure))
        .orElse(failure);
  }

  /** The address of its first page, with a slash at the end. */
  public URI uri() {
    return uri;
  }

  ServletWebServerApplicationContext context() {
    return context;
  }

  /**
   * Does something when the process is told to end, after the server and its clinic are closed: the
   * verb that waits may not be reached any more.
   */
  public static void atProcessEnd(Runnable action) {
    SpringApplication.getShutdownHandlers().add(action);
  }

  /** Takes the word of whoever started it, at this machine, that date and time are right. */
  public void confirmClock(String by) {
    context.getBean(ClockWatch.class).confirmed(by);
  }

  /** Waits until it is closed or the process is told to end. */
  public void awaitEnd() {
    try {
      ended.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    context.close();
  }
}
