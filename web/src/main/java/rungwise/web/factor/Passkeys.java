package rungwise.web.factor;

import com.webauthn4j.WebAuthnManager;
import com.webauthn4j.converter.AttestedCredentialDataConverter;
import com.webauthn4j.converter.util.ObjectConverter;
import com.webauthn4j.credential.CredentialRecordImpl;
import com.webauthn4j.data.AttestationConveyancePreference;
import com.webauthn4j.data.AuthenticationData;
import com.webauthn4j.data.AuthenticationParameters;
import com.webauthn4j.data.AuthenticatorSelectionCriteria;
import com.webauthn4j.data.PublicKeyCredentialCreationOptions;
import com.webauthn4j.data.PublicKeyCredentialDescriptor;
import com.webauthn4j.data.PublicKeyCredentialParameters;
import com.webauthn4j.data.PublicKeyCredentialRequestOptions;
import com.webauthn4j.data.PublicKeyCredentialRpEntity;
import com.webauthn4j.data.PublicKeyCredentialType;
import com.webauthn4j.data.PublicKeyCredentialUserEntity;
import com.webauthn4j.data.RegistrationData;
import com.webauthn4j.data.RegistrationParameters;
import com.webauthn4j.data.ResidentKeyRequirement;
import com.webauthn4j.data.UserVerificationRequirement;
import com.webauthn4j.data.attestation.authenticator.AttestedCredentialData;
import com.webauthn4j.data.attestation.statement.COSEAlgorithmIdentifier;
import com.webauthn4j.data.attestation.statement.NoneAttestationStatement;
import com.webauthn4j.data.client.Origin;
import com.webauthn4j.data.client.challenge.Challenge;
import com.webauthn4j.data.client.challenge.DefaultChallenge;
import com.webauthn4j.server.ServerProperty;
import com.webauthn4j.util.exception.WebAuthnException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.factor.Passkey;
import rungwise.clinic.people.Account;

/**
 * What is asked of a browser about passkeys, and whether its answer is right (W3C Web
 * Authentication, level 2, sections 7.1 and 7.2; the steps are those of the library). The device
 * must verify its holder. Where a device comes from is not asked.
 */
final class Passkeys {

  private static final long PATIENCE = Duration.ofMinutes(5).toMillis();
  private static final List<PublicKeyCredentialParameters> KINDS =
      List.of(
          new PublicKeyCredentialParameters(
              PublicKeyCredentialType.PUBLIC_KEY, COSEAlgorithmIdentifier.ES256),
          new PublicKeyCredentialParameters(
              PublicKeyCredentialType.PUBLIC_KEY, COSEAlgorithmIdentifier.EdDSA),
          new PublicKeyCredentialParameters(
              PublicKeyCredentialType.PUBLIC_KEY, COSEAlgorithmIdentifier.RS256));

  private final ObjectConverter converter = new ObjectConverter();
  private final WebAuthnManager manager = WebAuthnManager.createNonStrictWebAuthnManager(converter);
  private final AttestedCredentialDataConverter publicParts =
      new AttestedCredentialDataConverter(converter);

  /** What a new passkey says of itself. */
  record Registered(String id, String publicPart, long signCount) {}

  /** What a known passkey says. */
  record Answered(String id, long signCount) {}

  static Challenge newChallenge() {
    return new DefaultChallenge();
  }

  /** The question for a new passkey, as JSON. */
  String askForNew(
      URI address, String clinic, Account account, List<Passkey> known, Challenge challenge) {
    return converter
        .getJsonMapper()
        .writeValueAsString(
            new PublicKeyCredentialCreationOptions(
                new PublicKeyCredentialRpEntity(address.getHost(), clinic),
                new PublicKeyCredentialUserEntity(
                    account.id().text().getBytes(StandardCharsets.US_ASCII),
                    account.signInName().text(),
                    account.fullName()),
                challenge,
                KINDS,
                PATIENCE,
                descriptors(known),
                new AuthenticatorSelectionCriteria(
                    null, ResidentKeyRequirement.REQUIRED, UserVerificationRequirement.REQUIRED),
                AttestationConveyancePreference.NONE,
                null));
  }

  /** The question for one of the known passkeys, or for any where none is named; as JSON. */
  String askForKnown(URI address, List<Passkey> known, Challenge challenge) {
    return converter
        .getJsonMapper()
        .writeValueAsString(
            new PublicKeyCredentialRequestOptions(
                challenge,
                PATIENCE,
                address.getHost(),
                descriptors(known),
                UserVerificationRequirement.REQUIRED,
                null));
  }

  private static List<PublicKeyCredentialDescriptor> descriptors(List<Passkey> known) {
    return known.stream()
        .map(
            passkey ->
                new PublicKeyCredentialDescriptor(
                    PublicKeyCredentialType.PUBLIC_KEY, bytes(passkey.id()), Set.of()))
        .toList();
  }

  /** The new passkey of an answer; empty if the answer is not right. */
  Optional<Registered> register(URI address, Challenge challenge, String answer) {
    try {
      RegistrationData data = manager.parseRegistrationResponseJSON(answer);
      manager.verify(
          data,
          new RegistrationParameters(
              server(address, challenge), KINDS, /* userVerificationRequired= */ true));
      var registered = data.getAttestationObject();
      AttestedCredentialData key =
          registered == null ? null : registered.getAuthenticatorData().getAttestedCredentialData();
      return key == null
          ? Optional.empty()
          : Optional.of(
              new Registered(
                  text(key.getCredentialId()),
                  text(publicParts.convert(key)),
                  registered.getAuthenticatorData().getSignCount()));
    } catch (WebAuthnException notRight) {
      return Optional.empty();
    }
  }

  /** The id of the passkey that an answer claims to be of. */
  Optional<String> claimed(String answer) {
    try {
      return Optional.of(text(manager.parseAuthenticationResponseJSON(answer).getCredentialId()));
    } catch (WebAuthnException notRight) {
      return Optional.empty();
    }
  }

  /** Whether an answer is that of a known passkey; empty if it is not right. */
  Optional<Answered> verify(URI address, Challenge challenge, Passkey known, String answer) {
    try {
      AuthenticationData data = manager.parseAuthenticationResponseJSON(answer);
      manager.verify(
          data,
          new AuthenticationParameters(
              server(address, challenge),
              stored(known),
              List.of(bytes(known.id())),
              /* userVerificationRequired= */ true));
      var said = data.getAuthenticatorData();
      return said == null
          ? Optional.empty()
          : Optional.of(new Answered(known.id(), said.getSignCount()));
    } catch (WebAuthnException notRight) {
      return Optional.empty();
    }
  }

  private CredentialRecordImpl stored(Passkey known) {
    return new CredentialRecordImpl(
        new NoneAttestationStatement(),
        null,
        null,
        null,
        known.signCount(),
        publicParts.convert(bytes(known.publicPart())),
        null,
        null,
        null,
        null);
  }

  private static ServerProperty server(URI address, Challenge challenge) {
    return ServerProperty.builder()
        .origin(new Origin(address.toString()))
        .rpId(address.getHost())
        .challenge(challenge)
        .build();
  }

  private static String text(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  private static byte[] bytes(String text) {
    return Base64.getUrlDecoder().decode(text);
  }
}
