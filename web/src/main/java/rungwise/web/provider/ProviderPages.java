package rungwise.web.provider;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import rungwise.clinic.people.People;
import rungwise.web.access.OtherWays;
import rungwise.web.access.PublicAddress;
import rungwise.web.page.Assets;
import rungwise.web.session.Sessions;

/** The ways to sign in besides name and password: a passkey, the clinic's identity provider. */
@Configuration(proxyBeanMethods = false)
public class ProviderPages {

  /** What this server offers. */
  private record Ways(PublicAddress address, Assets assets, Optional<ProviderSettings> provider)
      implements OtherWays {

    @Override
    public Offered at(HttpServletRequest request) {
      return new Offered(
          address.ofPasskeys(request).map(here -> assets.passkeyScript()),
          provider.map(ProviderSettings::name));
    }
  }

  @Bean
  OtherWays otherWays(
      PublicAddress address, Assets assets, ObjectProvider<ProviderSettings> settings) {
    return new Ways(address, assets, Optional.ofNullable(settings.getIfAvailable()));
  }

  @Bean
  ProviderController providerController(
      PublicAddress address,
      ObjectProvider<ProviderSettings> settings,
      People people,
      Sessions sessions) {
    Optional<Provider> provider =
        Optional.ofNullable(settings.getIfAvailable())
            .map(
                found ->
                    new Provider(found, address.given().orElseThrow() + ProviderController.RETURN));
    return new ProviderController(provider, people, sessions);
  }
}
