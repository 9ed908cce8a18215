package rungwise.app.server;

import jakarta.servlet.ServletException;
import java.io.IOException;
import java.time.Duration;
import java.util.Set;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.apache.coyote.ActionCode;
import rungwise.clinic.StillWanted;

/**
 * Ends the reading of a page whose browser has closed the connection. Forms are taken to their end:
 * whoever has sent one and left has still sent it.
 */
final class Departures extends ValveBase {

  private static final Set<String> READS = Set.of("GET", "HEAD");

  Departures() {
    super(/* asyncSupported= */ false);
  }

  @Override
  public void invoke(Request request, Response response) throws IOException, ServletException {
    if (!READS.contains(request.getMethod())) {
      getNext().invoke(request, response);
      return;
    }
    var connection = new Connection(request.getCoyoteRequest());
    try {
      StillWanted.by(connection::isOpen, () -> getNext().invoke(request, response));
    } catch (IOException | ServletException | RuntimeException ofThePage) {
      throw ofThePage;
    } catch (Exception none) {
      throw new IllegalStateException("bug: a page fails in a way that it cannot", none);
    }
  }

  /** Looks, without waiting, whether the other end has closed; used by the page's own thread. */
  private static final class Connection {

    private static final long BETWEEN_LOOKS = Duration.ofMillis(2).toNanos();

    /**
     * What the server says is there to be read where reading failed or the end was met. Another
     * request that a browser sends before this answer is longer.
     */
    private static final int END = 1;

    private final org.apache.coyote.Request request;
    private long looked = System.nanoTime() - BETWEEN_LOOKS;
    private boolean isOpen = true;

    Connection(org.apache.coyote.Request request) {
      this.request = request;
    }

    boolean isOpen() {
      long now = System.nanoTime();
      if (isOpen && now - looked >= BETWEEN_LOOKS) {
        looked = now;
        // True: it may read for that, without waiting.
        request.action(ActionCode.AVAILABLE, true);
        isOpen = request.getAvailable() != END;
      }
      return isOpen;
    }
  }
}
