package rungwise.app.verb;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import rungwise.app.server.WrongUse;
import rungwise.web.provider.ProviderSettings;

/** The clinic's own identity provider, as the command line names it. */
final class ProviderOptions {

  private static final String SECRET_VARIABLE = "RUNGWISE_OIDC_CLIENT_SECRET";

  @Option(
      names = "--oidc-issuer",
      defaultValue = "${env:RUNGWISE_OIDC_ISSUER}",
      description = {
        "Address of the clinic's identity provider (OpenID Connect), with which people may sign in"
            + " too. Also RUNGWISE_OIDC_ISSUER."
      })
  private @Nullable String issuer;

  @Option(
      names = "--oidc-client-id",
      defaultValue = "${env:RUNGWISE_OIDC_CLIENT_ID}",
      description = "By which the provider knows this program. Also RUNGWISE_OIDC_CLIENT_ID.")
  private @Nullable String clientId;

  @Option(
      names = "--oidc-client-secret-file",
      description = {
        "File with the secret that the provider gave for it. Or give the secret itself in "
            + SECRET_VARIABLE
            + "."
      })
  private @Nullable Path secretFile;

  @Option(
      names = "--oidc-claim",
      defaultValue = "preferred_username",
      description = "What the provider says that is the sign-in name here. [${DEFAULT-VALUE}]")
  private String claim = "";

  @Option(
      names = "--oidc-name",
      defaultValue = "the clinic's account",
      description = "What the button says: Sign in with ... [${DEFAULT-VALUE}]")
  private String name = "";

  /**
   * The provider, if one was named.
   *
   * @throws WrongUse if something of it is missing or cannot be
   */
  Optional<ProviderSettings> read() {
    if (issuer == null || issuer.isBlank()) {
      return Optional.empty();
    }
    if (clientId == null || clientId.isBlank()) {
      throw new WrongUse("--oidc-issuer needs --oidc-client-id: ask whoever keeps the provider.");
    }
    URI address = PublicAddresses.read("--oidc-issuer", issuer, /* mayHavePath= */ true);
    return Optional.of(new ProviderSettings(address, clientId, secret(), claim, name));
  }

  private String secret() {
    Optional<String> given =
        secretFile == null
            ? Optional.ofNullable(System.getenv(SECRET_VARIABLE))
            : Optional.of(contentOf(secretFile));
    return given
        .map(String::strip)
        .filter(text -> !text.isEmpty())
        .orElseThrow(
            () ->
                new WrongUse(
                    "--oidc-issuer needs the provider's secret for this program: give"
                        + " --oidc-client-secret-file, or "
                        + SECRET_VARIABLE
                        + "."));
  }

  private static String contentOf(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new WrongUse(
          "--oidc-client-secret-file "
              + file
              + " cannot be read: name a file that this account may read.",
          e);
    }
  }
}
