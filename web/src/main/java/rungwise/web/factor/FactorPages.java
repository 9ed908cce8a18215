package rungwise.web.factor;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.annotation.Order;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.PasskeyUse;
import rungwise.clinic.factor.SecondFactors;
import rungwise.web.access.PublicAddress;
import rungwise.web.page.Assets;
import rungwise.web.page.Templates;
import rungwise.web.secrets.CodeLimiter;
import rungwise.web.session.Sessions;
import rungwise.web.session.Shifts;

/** The pages about the second factor, and the question for it before a signature. */
@Configuration(proxyBeanMethods = false)
@Import({
  AccountController.class,
  PasskeyController.class,
  ProofController.class,
  ResetController.class
})
public class FactorPages {

  private static final int BEFORE_VIEWS = 200;

  @Bean
  Passkeys passkeys() {
    return new Passkeys();
  }

  @Bean
  Prover prover(
      SecondFactors factors,
      PasskeyUse passkeyUse,
      Passkeys passkeys,
      PublicAddress address,
      Shifts shifts,
      CodeLimiter limiter) {
    return new Prover(factors, passkeyUse, passkeys, address, shifts, limiter);
  }

  @Bean
  StepUp stepUp(
      FactorRule rule,
      SecondFactors factors,
      Prover prover,
      Shifts shifts,
      PublicAddress address,
      Assets assets,
      Templates templates) {
    return new StepUp(rule, factors, prover, shifts, address, assets, templates);
  }

  @Bean
  OwnPages ownPages(
      SecondFactors factors,
      FactorRule rule,
      Sessions sessions,
      PublicAddress address,
      Assets assets,
      ClinicTime time) {
    return new OwnPages(factors, rule, sessions, address, assets, time);
  }

  @Bean
  @Order(BEFORE_VIEWS)
  WebMvcConfigurer secondFactorIsAsked(StepUp stepUp) {
    return new WebMvcConfigurer() {
      @Override
      public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(stepUp);
      }
    };
  }
}
