package rungwise.dosing.protocol;

import rungwise.dosing.source.Source;

/**
 * A number of a protocol that its signer confirms singly, because it goes past every text that was
 * read, or past the one that it cites, or because it more than doubles a dose.
 *
 * @param number part and number, such as "ceiling: 80 mcg"; another number is another one
 * @param why what it goes past
 * @param source what the protocol itself gives as its source
 */
public record ToConfirm(String number, String why, Source source) {

  /** "ceiling: 80 mcg is more than 60 mcg (US ...). Its source here: ...". */
  public String words() {
    return number + " " + why + ". Its source here: " + source.words() + ".";
  }
}
