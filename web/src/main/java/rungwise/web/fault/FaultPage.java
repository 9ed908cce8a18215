package rungwise.web.fault;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.springframework.http.HttpStatus;
import rungwise.web.page.Templates;

/**
 * What a page says that cannot be what was asked for.
 *
 * @param headline what happened, in a few words
 * @param sentence why, and whether anything was saved
 * @param next what the link says that leads on
 * @param nextPath where it leads
 */
public record FaultPage(
    HttpStatus status, String headline, String sentence, String next, String nextPath) {

  private static final String TO_TODAY = "Go to Today";
  private static final String TODAY = "/";

  /** A form that outlived its page or its session. */
  public static final FaultPage STALE =
      new FaultPage(
          HttpStatus.FORBIDDEN,
          "Your page was open too long",
          "Nothing was saved. Open the page again, enter what you entered, and send it within 15"
              + " minutes.",
          TO_TODAY,
          TODAY);

  /** A page that names a man and could not be written into the record of views. */
  public static final FaultPage NOT_RECORDED =
      new FaultPage(
          HttpStatus.SERVICE_UNAVAILABLE,
          "The record could not be written",
          "Who looks at a man is written down before anything of him is shown. That was not"
              + " possible, so nothing was shown. If you sent a form, look whether it was saved"
              + " before you send it again. Tell your administrator if this stays so.",
          TO_TODAY,
          TODAY);

  /** One person has asked for so many pages, one after the other, that others would wait. */
  public static final FaultPage TOO_MANY =
      new FaultPage(
          HttpStatus.TOO_MANY_REQUESTS,
          "So many pages at once",
          "Your browser has asked for pages without a pause, so that others would wait. Nothing is"
              + " lost. Wait half a minute and open the page again. Reports and other forms are"
              + " taken all the same.",
          TO_TODAY,
          TODAY);

  /** A form that could not be written down, such as on a full disk. */
  public static final FaultPage NOT_KEPT =
      new FaultPage(
          HttpStatus.SERVICE_UNAVAILABLE,
          "Nothing was saved",
          "The disk that holds the record is full or may not be written to. What was saved before"
              + " is still there. Write down what you entered, and tell your administrator now:"
              + " until this is put right nothing can be saved or shown.",
          TO_TODAY,
          TODAY);

  /** A course of whose record too little is left to show anything. */
  public static final FaultPage UNREADABLE =
      new FaultPage(
          HttpStatus.SERVICE_UNAVAILABLE,
          "The record of this man cannot be read",
          "Nothing was saved and nothing can be shown: another program, or a fault of the disk,"
              + " changed what had been saved. Inject nothing by it. If he calls, go by what he"
              + " says: an erection that may have lasted 4 hours is an emergency. Write down what"
              + " he tells you and the time, and tell your administrator now: a sound record has"
              + " to be put back, as the guide says.",
          TO_TODAY,
          TODAY);

  /**
   * A page that failed while the record is not as it was written.
   *
   * @param number under which the log has the rest
   */
  static FaultPage damaged(String number) {
    return new FaultPage(
        HttpStatus.SERVICE_UNAVAILABLE,
        "The record is damaged",
        "What is needed here cannot be read: another program, or a fault of the disk, changed what"
            + " had been saved. It is not certain that what you sent was saved, so write it on"
            + " paper with the time. If a man calls, go by what he says: an erection that may have"
            + " lasted 4 hours is an emergency. Tell your administrator now, with the number "
            + number
            + ": the page Faults of the record says what to do.",
        "Open the page for a call",
        "/call");
  }

  /** A form with more text in it than any form of the program needs. */
  static final FaultPage TOO_LARGE =
      new FaultPage(
          HttpStatus.CONTENT_TOO_LARGE,
          "That was too much text",
          "A form may hold "
              + FaultPages.MOST_KIB_OF_A_FORM
              + " KiB, which is some 100 pages of text. Nothing was saved. Go back, shorten what"
              + " you pasted, and send it again.",
          TO_TODAY,
          TODAY);

  /** The page for a status of an answer; every status that has no page of its own shares one. */
  public static FaultPage of(HttpStatus status) {
    return switch (status) {
      case FORBIDDEN ->
          fault(
              status,
              "This page is not open to you",
              "None of your roles may use it, and nothing was changed. An administrator can change"
                  + " your roles.");
      case NOT_FOUND ->
          fault(
              status,
              "There is no such page",
              "Check the address. If a link of this program led here, tell your administrator which"
                  + " one.");
      case METHOD_NOT_ALLOWED ->
          fault(
              status,
              "That cannot be done here",
              "The address exists, but not for what was asked. Nothing was saved. Use the buttons"
                  + " and links of the pages.");
      default ->
          fault(
              status,
              "That was not understood",
              "The browser sent something this program does not accept. Nothing was saved. Go back,"
                  + " open the page again and try once more.");
    };
  }

  private static FaultPage fault(HttpStatus status, String headline, String sentence) {
    return new FaultPage(status, headline, sentence, TO_TODAY, TODAY);
  }

  /** Writes it as the whole answer. */
  public void write(Templates templates, HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    response.setStatus(status.value());
    templates.write("fault/fault", Map.of("page", this), request, response);
  }
}
