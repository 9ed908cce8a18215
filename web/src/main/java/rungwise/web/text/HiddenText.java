package rungwise.web.text;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.HandlerInterceptor;
import rungwise.clinic.OutsideText;
import rungwise.web.page.HeldField;
import rungwise.web.page.Templates;

/**
 * Stands before every form, those of features to come too: no text with a character that nobody can
 * see reaches a handler. A password is compared as typed: it is not read here, and never sent back.
 */
final class HiddenText implements HandlerInterceptor {

  private static final String TEMPLATE = "text/hidden";
  private static final String SECRET = "password";

  private final Templates templates;

  HiddenText(Templates templates) {
    this.templates = templates;
  }

  @Override
  public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
      throws IOException {
    if (!HttpMethod.POST.matches(request.getMethod())) {
      return true;
    }
    HiddenTextPage page = read(request);
    if (page.texts().isEmpty()) {
      return true;
    }
    refuse(request, response, page);
    return false;
  }

  private static HiddenTextPage read(HttpServletRequest request) {
    var held = new ArrayList<HeldField>();
    var texts = new ArrayList<HiddenTextPage.Text>();
    var secrets = new ArrayList<HiddenTextPage.Secret>();
    for (HeldField field : HeldField.of(request, Set.of())) {
      Optional<String> fault = fault(field);
      if (isSecret(field)) {
        secrets.add(new HiddenTextPage.Secret("secret-" + (secrets.size() + 1), field.name()));
      } else if (fault.isPresent()) {
        String id = "text-" + (texts.size() + 1);
        String cleaned = OutsideText.cleaned(field.value());
        texts.add(new HiddenTextPage.Text(id, field.name(), fault.get(), cleaned));
      } else {
        held.add(field);
      }
    }
    return new HiddenTextPage(request.getRequestURI(), held, texts, secrets);
  }

  private static Optional<String> fault(HeldField field) {
    return OutsideText.hiddenIn("This text", OutsideText.withoutTabs(field.value()));
  }

  private static boolean isSecret(HeldField field) {
    return field.name().toLowerCase(Locale.ROOT).contains(SECRET);
  }

  private void refuse(HttpServletRequest request, HttpServletResponse response, HiddenTextPage page)
      throws IOException {
    response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
    templates.write(TEMPLATE, Map.of("page", page), request, response);
  }
}
