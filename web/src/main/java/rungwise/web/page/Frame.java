package rungwise.web.page;

import java.util.List;

/**
 * What surrounds the content of a page.
 *
 * @param clinic the clinic's name, or the program's where there is no clinic yet
 * @param person full name of who is signed in; empty if nobody is
 * @param links where that person may go
 * @param maySearch whether that person may look for a man
 * @param csrf the proof that a form came from one of our pages
 * @param stylesheet address of the style sheet
 * @param clock what is said of the clock
 * @param record what is known to be wrong with the record, a sentence each
 * @param paper what a page says when it is printed
 */
public record Frame(
    String clinic,
    String person,
    List<Link> links,
    boolean maySearch,
    Csrf csrf,
    String stylesheet,
    ClockNotice clock,
    List<String> record,
    Paper paper) {

  /**
   * One entry of the navigation.
   *
   * @param current whether the page shown belongs to it
   */
  public record Link(String path, String word, boolean current) {}

  /**
   * A page on paper.
   *
   * @param asOf when it was made, by the server's clock; empty where that is nobody's business
   * @param script address of the script that prints a page which was asked for on paper
   */
  public record Paper(String asOf, String script) {

    /** Of a page that is not meant for paper. */
    public static final Paper NONE = new Paper("", "");
  }

  /** A hidden field: its name and its value. */
  public record Csrf(String name, String value) {

    /** Of a page without forms. */
    public static final Csrf NONE = new Csrf("_csrf", "");
  }

  public Frame {
    links = List.copyOf(links);
    record = List.copyOf(record);
  }

  /** The frame of a page that must work when nothing else does. */
  public static Frame bare(String stylesheet) {
    return new Frame(
        "Rungwise",
        "",
        List.of(),
        /* maySearch= */ false,
        Csrf.NONE,
        stylesheet,
        ClockNotice.NONE,
        List.of(),
        Paper.NONE);
  }

  public boolean isSignedIn() {
    return !person.isEmpty();
  }
}
