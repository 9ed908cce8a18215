package rungwise.clinic.handout;

import java.util.List;
import java.util.Optional;

/**
 * The sheets of a course, and what a new one would begin with.
 *
 * @param why why none can be made now; empty if one can
 * @param draft the form as it begins
 * @param isDraft whether no prescriber has signed the words
 * @param signedWords by whom and when they were signed; empty while they are not
 * @param made those that were made, the newest first
 */
public record SheetView(
    Optional<String> why, SheetDraft draft, boolean isDraft, String signedWords, List<Made> made) {

  public SheetView {
    made = List.copyOf(made);
  }

  /**
   * One that was made.
   *
   * @param entry its id in the record
   * @param standing what a look by its code would tell
   */
  public record Made(
      String entry,
      String code,
      String when,
      String by,
      String language,
      String paper,
      SheetStanding standing) {}
}
