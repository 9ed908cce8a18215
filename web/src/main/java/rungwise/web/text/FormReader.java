package rungwise.web.text;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.HandlerInterceptor;
import rungwise.clinic.OutsideText;
import rungwise.web.fault.FaultPages;
import rungwise.web.page.HeldField;
import rungwise.web.page.Templates;

/**
 * Stands before every form, those of features to come too: no text with a character that nobody can
 * see reaches a handler, and no form that is larger than a form may be. Both are shown again, to be
 * sent on. A password is compared as typed: it is not read here, and never sent back.
 */
final class FormReader implements HandlerInterceptor {

  private static final String TEMPLATE = "text/again";
  private static final String SECRET = "password";
  private static final int KIB = 1024;

  /** What is shown to be shortened, where the form is too large. */
  private static final int LONG = 4 * KIB;

  private final Templates templates;

  FormReader(Templates templates) {
    this.templates = templates;
  }

  @Override
  public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
      throws IOException {
    if (!HttpMethod.POST.matches(request.getMethod())) {
      return true;
    }
    SendAgainPage page = read(request);
    if (page.texts().isEmpty()) {
      return true;
    }
    HttpStatus status =
        page.isTooLarge() ? HttpStatus.CONTENT_TOO_LARGE : HttpStatus.UNPROCESSABLE_CONTENT;
    response.setStatus(status.value());
    templates.write(TEMPLATE, Map.of("page", page), request, response);
    return false;
  }

  private static SendAgainPage read(HttpServletRequest request) {
    List<HeldField> fields = HeldField.of(request, Set.of());
    boolean isTooLarge = bytes(request, fields) > FaultPages.MOST_KIB_OF_A_FORM * (long) KIB;
    var held = new ArrayList<HeldField>();
    var texts = new ArrayList<SendAgainPage.Text>();
    var secrets = new ArrayList<SendAgainPage.Secret>();
    for (HeldField field : fields) {
      List<String> faults = faults(field, isTooLarge);
      if (isSecret(field)) {
        secrets.add(new SendAgainPage.Secret("secret-" + (secrets.size() + 1), field.name()));
      } else if (faults.isEmpty()) {
        held.add(field);
      } else {
        String id = "text-" + (texts.size() + 1);
        String cleaned = OutsideText.cleaned(field.value());
        texts.add(new SendAgainPage.Text(id, field.name(), faults, cleaned));
      }
    }
    return new SendAgainPage(request.getRequestURI(), isTooLarge, held, texts, secrets);
  }

  /** As it was sent; where the browser does not say how much that was, as it would be kept. */
  private static long bytes(HttpServletRequest request, List<HeldField> fields) {
    return request.getContentLengthLong() >= 0
        ? request.getContentLengthLong()
        : fields.stream().mapToLong(field -> size(field.name()) + size(field.value())).sum();
  }

  private static long size(String text) {
    return text.getBytes(StandardCharsets.UTF_8).length;
  }

  private static List<String> faults(HeldField field, boolean isTooLarge) {
    var faults = new ArrayList<String>();
    if (isTooLarge && field.value().length() > LONG) {
      faults.add("This text takes " + (size(field.value()) + KIB - 1) / KIB + " KiB: shorten it.");
    }
    Optional<String> hidden =
        OutsideText.hiddenIn("This text", OutsideText.withoutTabs(field.value()));
    hidden.ifPresent(faults::add);
    return faults;
  }

  private static boolean isSecret(HeldField field) {
    return field.name().toLowerCase(Locale.ROOT).contains(SECRET);
  }
}
