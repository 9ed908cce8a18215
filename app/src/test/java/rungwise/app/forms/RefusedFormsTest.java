package rungwise.app.forms;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import rungwise.app.forms.FilledForm.Control;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.Visitor;

/**
 * Every form of every page of the invented clinic, sent so that it is refused: the answer shows the
 * same form with everything that was typed and picked, secrets aside.
 */
final class RefusedFormsTest {

  private static final int REFUSED = 422;
  private static final Duration UNTIL_THE_NEXT_TRY = Duration.ofMinutes(1);

  /** Longer than any text of the record may be. */
  private static final String TOO_LONG = "typed ".repeat(1000).strip();

  /** Neither a name nor an amount, nor a time of day. */
  private static final String NOT_IT = "typed 1e3 & \"so\"";

  /**
   * Not sent: what would end the session or the account that sends it, and the answers of the
   * screening, which are picked, always accepted, and change what else the page asks.
   */
  private static final List<String> LEFT_OUT =
      List.of(
          "/sign-out",
          "/deactivate",
          "/sessions/{handle}/end",
          "/end-sessions",
          "/new-code",
          "/screening");

  /** Buttons, into which nothing is typed, and the search, which takes whatever it is asked. */
  private static final Set<String> NEVER_REFUSED =
      Set.of(
          "/syringes/{token}",
          "/protocols/{name}/{version}/sign",
          "/room/close",
          "/men",
          "/words/sign",
          "/call-book/print");

  private static final Pattern OPTIONAL =
      Pattern.compile("<label for=\"([^\"]+)\">[^<]*\\(optional\\)");

  private static final Clinic clinic = Clinic.withDemoStory();

  @AfterAll
  static void close() {
    clinic.close();
  }

  /** What was lost of each form that was sent and refused. */
  private final Map<String, String> lost = new TreeMap<>();

  /** The fields that were called optional and then asked for. */
  private final Set<String> wanted = new TreeSet<>();

  /** The addresses of the forms that were sent, and of those that were refused. */
  private final Set<String> met = new TreeSet<>();

  private final Set<String> refused = new TreeSet<>();

  /** The same form of another course says nothing more. */
  private final Set<String> sent = new HashSet<>();

  /** How a form is filled in so that something of it cannot be taken. */
  private enum Filling {
    TOO_MUCH,
    TOO_LITTLE,
    NOTHING_FITS;

    /** What is typed into a control or picked of it; nothing where it is left alone. */
    private List<String> of(Control control) {
      return switch (control.kind()) {
        case HIDDEN -> control.holds();
        case SECRET -> List.of("not-the-password");
        case TEXT -> List.of(text());
        case DATE -> List.of(this == TOO_LITTLE ? "" : "2041-02-03");
        case ONE_OF ->
            control.offers().isEmpty()
                ? List.of()
                : List.of(
                    this == TOO_LITTLE ? control.offers().getFirst() : control.offers().getLast());
        case SEVERAL_OF -> this == TOO_LITTLE ? List.of() : control.offers();
      };
    }

    private String text() {
      return switch (this) {
        case TOO_MUCH -> TOO_LONG;
        case NOTHING_FITS -> NOT_IT;
        case TOO_LITTLE -> "";
      };
    }
  }

  @Test
  void a_refused_form_keeps_what_was_typed_and_picked() {
    for (Filling filling : Filling.values()) {
      for (int who : List.of(1, 2, 0)) { // the prescriber, the educator, the administrator
        Visitor visitor = clinic.signedIn(DemoClinic.MEMBERS.get(who));
        WalkedPages.of(visitor)
            .forEach((page, forms) -> forms.forEach(form -> fill(visitor, page, form, filling)));
      }
    }

    assertThat(lost).isEmpty();
    assertThat(wanted).as("called optional, and asked for").isEmpty();
    met.removeAll(refused);
    assertThat(met).as("never refused here").isSubsetOf(NEVER_REFUSED);
    assertThat(refused).hasSizeGreaterThan(30);
  }

  /** A form that is met late is sent with too much first, which nothing accepts. */
  private void fill(Visitor visitor, String page, FilledForm form, Filling filling) {
    refuse(visitor, page, form, Filling.TOO_MUCH);
    refuse(visitor, page, form, filling);
  }

  private void refuse(Visitor visitor, String page, FilledForm form, Filling filling) {
    String pattern = WalkedPages.routeOf(form.action());
    if (LEFT_OUT.stream().anyMatch(pattern::endsWith) || !sent.add(filling + " " + pattern)) {
      return;
    }
    met.add(pattern);
    FilledForm.of(page, visitor.get(page).body()).stream()
        .filter(now -> now.isLike(form))
        .findFirst()
        .filter(now -> isRefused(visitor, page, now, filling))
        .ifPresent(now -> refused.add(pattern));
  }

  private boolean isRefused(Visitor visitor, String page, FilledForm form, Filling filling) {
    clinic.clock().moveOn(UNTIL_THE_NEXT_TRY);
    var filled = new LinkedHashMap<String, List<String>>();
    form.controls().forEach(control -> filled.put(control.name(), filling.of(control)));
    var fields = new ArrayList<Map.Entry<String, String>>();
    filled.forEach((name, values) -> values.forEach(value -> fields.add(Map.entry(name, value))));
    fields.removeIf(field -> field.getKey().equals("_csrf"));

    HttpResponse<String> answer = visitor.postAll(page, form.action(), fields);

    if (answer.statusCode() != REFUSED) {
      return false;
    }
    if (filling == Filling.TOO_LITTLE) {
      OPTIONAL
          .matcher(answer.body())
          .results()
          .map(label -> label.group(1))
          .filter(field -> answer.body().contains("id=\"" + field + "-fault\""))
          .forEach(field -> wanted.add(form.action() + " " + field));
    }
    List<List<String>> lacking =
        FilledForm.of(form.action(), answer.body()).stream()
            .filter(one -> one.action().equals(form.action()))
            .map(one -> lostBy(one, form, filled))
            .toList();
    if (lacking.stream().noneMatch(List::isEmpty)) {
      lost.put(form.action() + " " + filling, lacking.isEmpty() ? "all of it" : lacking.toString());
    }
    return true;
  }

  /** Of what was sent: what a form that is shown again does not hold. */
  private static List<String> lostBy(
      FilledForm shown, FilledForm form, Map<String, List<String>> filled) {
    return form.controls().stream()
        .filter(one -> one.kind() != FilledForm.Kind.SECRET)
        .filter(one -> one.kind() != FilledForm.Kind.HIDDEN)
        .filter(
            one ->
                !said(shown.control(one.name()).map(Control::holds).orElse(List.of()))
                    .equals(said(filled.getOrDefault(one.name(), List.of()))))
        .map(Control::name)
        .toList();
  }

  /** Nothing said is the same whether its field is shown or not. */
  private static Set<String> said(List<String> values) {
    return values.stream().filter(value -> !value.isBlank()).collect(Collectors.toSet());
  }
}
