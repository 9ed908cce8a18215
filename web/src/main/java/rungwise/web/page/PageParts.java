package rungwise.web.page;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Templates, style sheet and fonts. */
@Configuration(proxyBeanMethods = false)
@Import(AssetController.class)
public class PageParts {

  @Bean
  Assets assets() {
    return new Assets();
  }

  @Bean
  Templates templates(Frames frames, Assets assets) {
    return new Templates(frames, assets);
  }

  @Bean
  TemplateViews templateViews(Templates templates) {
    return new TemplateViews(templates);
  }
}
