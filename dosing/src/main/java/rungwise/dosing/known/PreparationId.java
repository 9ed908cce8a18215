package rungwise.dosing.known;

/**
 * Names one version of one preparation: another strength, or a changed one, is another id.
 *
 * @param value not blank
 */
public record PreparationId(String value) {
  public PreparationId {
    if (value.isBlank()) {
      throw new IllegalArgumentException("bug: a preparation without an id");
    }
  }

  @Override
  public String toString() {
    return value;
  }
}
