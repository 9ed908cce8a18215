package rungwise.web.handout;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import rungwise.web.secrets.AskLimiter;
import rungwise.web.secrets.SteadyTime;

/** The pages of sheets for home. */
@Configuration(proxyBeanMethods = false)
@Import({SheetController.class, CurrentController.class, WordsController.class})
public class HandoutPages {

  @Bean
  AskLimiter askLimiter(SteadyTime time) {
    return new AskLimiter(time);
  }
}
