package rungwise.web.page;

import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.core.Ordered;
import org.springframework.web.servlet.View;
import org.springframework.web.servlet.ViewResolver;

/** Finds the template for a view name that starts with "jte:"; leaves every other name alone. */
final class TemplateViews implements ViewResolver, Ordered {

  private static final String PREFIX = "jte:";

  private final Templates templates;

  TemplateViews(Templates templates) {
    this.templates = templates;
  }

  @Override
  public @Nullable View resolveViewName(String viewName, Locale locale) {
    if (!viewName.startsWith(PREFIX)) {
      return null;
    }
    String template = viewName.substring(PREFIX.length());
    return (model, request, response) ->
        templates.write(template, model == null ? Map.of() : model, request, response);
  }

  @Override
  public int getOrder() {
    return Ordered.HIGHEST_PRECEDENCE;
  }
}
