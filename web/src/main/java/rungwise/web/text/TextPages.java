package rungwise.web.text;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import rungwise.web.page.Templates;

/** Reads every form before its handler does. */
@Configuration(proxyBeanMethods = false)
public class TextPages {

  /** After the right to a course, before anything is asked of who sent it. */
  private static final int AFTER_RIGHTS = 120;

  @Bean
  @Order(AFTER_RIGHTS)
  WebMvcConfigurer formsAreRead(Templates templates) {
    return new WebMvcConfigurer() {
      @Override
      public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new FormReader(templates));
      }
    };
  }
}
