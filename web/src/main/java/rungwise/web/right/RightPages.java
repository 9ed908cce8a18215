package rungwise.web.right;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.annotation.Order;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.clock.ClockCheck;
import rungwise.web.page.Templates;

/** The right to a course, asked before anything else about it, and the clock of a signature. */
@Configuration(proxyBeanMethods = false)
@Import(AccessController.class)
public class RightPages {

  private static final int FIRST = 100;

  /** After the right to the course, and before a second factor is given for nothing. */
  private static final int BEFORE_FACTORS = 150;

  @Bean
  @Order(FIRST)
  WebMvcConfigurer courseRightIsAsked(CourseAccess access, Templates templates) {
    return new WebMvcConfigurer() {
      @Override
      public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new CourseRight(access, templates));
      }
    };
  }

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
