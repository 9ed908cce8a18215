package rungwise.web.factor;

import java.util.List;
import java.util.Optional;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * One's own account as shown.
 *
 * @param answer whether there is something to do
 * @param codes recovery codes that were just made, on this one view only
 * @param passkeyScript address of the script; empty where no passkey works
 * @param passkeyAddress where passkeys work, if somewhere else
 */
public record OwnAccountPage(
    String fullName,
    String signInName,
    String answer,
    boolean hasAuthenticator,
    boolean isSetUp,
    int recoveryCodes,
    List<String> codes,
    List<Key> passkeys,
    Optional<String> passkeyScript,
    Optional<String> passkeyAddress,
    Field passkeyName,
    List<Place> places,
    String notice,
    Faults faults) {

  /** One passkey. */
  public record Key(String id, String name, String added) {}

  /** Where one is signed in. */
  public record Place(
      String handle,
      String since,
      String lastSeen,
      String address,
      String browser,
      boolean isHere) {}

  public OwnAccountPage {
    codes = List.copyOf(codes);
    passkeys = List.copyOf(passkeys);
    places = List.copyOf(places);
  }
}
