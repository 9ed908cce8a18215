package rungwise.web.callbook;

import java.time.Instant;
import java.util.List;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.callbook.CallProtocol;

/**
 * The page that is printed for when the server is down.
 *
 * @param standing which version it is
 * @param made when it was made
 */
public record PrintedCallPage(
    CallProtocol protocol,
    String standing,
    List<DepartmentLine> departments,
    long edition,
    String made) {

  static PrintedCallPage of(CallBooks books, ClinicTime time, Instant now) {
    return new PrintedCallPage(
        books.protocol(),
        books
            .signed()
            .map(one -> "version " + one.version() + " of the clinic's protocol")
            .orElse("a sample that this clinic has not signed"),
        DepartmentLine.all(books),
        books.edition(),
        time.words(now));
  }
}
