package rungwise.clinic.titration;

/**
 * A stored decision asked again.
 *
 * @param stored what was stored when it was signed
 * @param again what the engine says now of the record as it was then
 */
public record Replay(String stored, String again) {

  public boolean isSame() {
    return stored.equals(again);
  }
}
