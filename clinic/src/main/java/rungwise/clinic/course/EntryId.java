package rungwise.clinic.course;

import java.util.UUID;

/**
 * The identity of an entry in the record.
 *
 * @param text a UUID in its lower-case form of 36 characters
 */
public record EntryId(String text) {

  public EntryId {
    if (!UUID.fromString(text).toString().equals(text)) {
      throw new IllegalArgumentException("bug: an entry id of " + text);
    }
  }

  @Override
  public String toString() {
    return text;
  }
}
