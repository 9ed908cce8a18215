package rungwise.web.clock;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.annotation.Order;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import rungwise.clinic.clock.ClockCheck;
import rungwise.web.page.Templates;

/** The page of the clock, and what stands before every signature while it is not known. */
@Configuration(proxyBeanMethods = false)
@Import(ClockController.class)
public class ClockPages {

  /** After the right to the course, and before a second factor is given for nothing. */
  private static final int BEFORE_FACTORS = 150;

  @Bean
  @Order(BEFORE_FACTORS)
  WebMvcConfigurer clockIsAsked(ClockCheck check, Templates templates) {
    return new WebMvcConfigurer() {
      @Override
      public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new SignatureClock(check, templates));
      }
    };
  }
}
