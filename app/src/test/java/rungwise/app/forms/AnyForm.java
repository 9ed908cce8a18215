package rungwise.app.forms;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import rungwise.app.forms.FilledForm.Control;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.Visitor;

/**
 * Sends any form of any page of a running server, with some fields changed as an input says. The
 * first two bytes choose the form, each line after them a field by its first character and a value.
 */
public final class AnyForm {

  /** Whatever would end the session or the account that sends the forms. */
  private static final List<String> ENDS_IT =
      List.of("/sign-out", "/deactivate", "/new-code", "/roles");

  /** After so many the clinic is begun anew, so that no course grows beyond all measure. */
  private static final int FORMS_OF_ONE_CLINIC = 5000;

  private static final Duration UNTIL_THE_NEXT_TRY = Duration.ofMinutes(1);
  private static final String TOKEN = "_csrf";
  private static final int SIZE_OF_BYTE = 256;

  /** Instead of a value: one that the form offers, no such field, an empty field, a line break. */
  private static final char OFFERED = '\u0001';

  private static final char ABSENT = '\u0002';
  private static final char EMPTY = '\u0003';
  private static final char LINE_BREAK = '\u0004';

  private Clinic clinic = Clinic.withDemoStory();
  private final Map<Integer, Visitor> visitors = new LinkedHashMap<>();
  private List<Sendable> forms = collect();
  private int sent;

  /** A form and who may send it. */
  private record Sendable(int who, FilledForm form) {}

  private List<Sendable> collect() {
    var found = new LinkedHashMap<String, Sendable>();
    for (int who : List.of(1, 2, 0)) { // the prescriber, the educator, the administrator
      signIn(who);
      WalkedPages.of(visitor(who)).values().stream()
          .flatMap(List::stream)
          .filter(form -> ENDS_IT.stream().noneMatch(form.action()::endsWith))
          .forEach(form -> found.putIfAbsent(keyOf(who, form), new Sendable(who, form)));
    }
    return List.copyOf(found.values());
  }

  /** The same form of twenty courses says nothing more than that of one. */
  private static String keyOf(int who, FilledForm form) {
    return who
        + WalkedPages.routeOf(form.action())
        + form.controls().stream().map(Control::name).toList();
  }

  private void signIn(int who) {
    clinic.clock().moveOn(UNTIL_THE_NEXT_TRY);
    visitors.put(who, clinic.signedIn(DemoClinic.MEMBERS.get(who)));
  }

  private Visitor visitor(int who) {
    return Objects.requireNonNull(visitors.get(who));
  }

  /** How many forms there are. */
  public int count() {
    return forms.size();
  }

  /** Sends what an input says; the status of the answer. */
  public int answerTo(byte[] input) {
    if (input.length < 2) {
      return 0;
    }
    beginAnewIfNeeded();
    int number = (input[0] & 0xFF) * SIZE_OF_BYTE + (input[1] & 0xFF);
    Sendable chosen = forms.get(number % forms.size());
    String rest = new String(input, 2, input.length - 2, StandardCharsets.UTF_8);
    Visitor visitor = visitor(chosen.who());
    HttpResponse<String> answer =
        visitor.postAllRaw(chosen.form().action(), fields(chosen.form(), rest));
    if (Visitor.location(answer).startsWith("/sign-in")) {
      signIn(chosen.who());
      forms = collect();
    }
    return answer.statusCode();
  }

  private void beginAnewIfNeeded() {
    sent++;
    if (sent % FORMS_OF_ONE_CLINIC == 0) {
      clinic.close();
      clinic = Clinic.withDemoStory();
      forms = collect();
    }
  }

  private static List<Map.Entry<String, String>> fields(FilledForm form, String changes) {
    var fields = new LinkedHashMap<String, List<String>>();
    form.controls().forEach(control -> fields.put(control.name(), control.holds()));
    List<Control> changed =
        form.controls().stream().filter(control -> !control.name().equals(TOKEN)).toList();
    for (String line : changes.split("\n", -1)) {
      if (!line.isEmpty() && !changed.isEmpty()) {
        Control control = changed.get(line.charAt(0) % changed.size());
        fields.put(control.name(), values(control, line.substring(1)));
      }
    }
    var all = new ArrayList<Map.Entry<String, String>>();
    fields.forEach((name, values) -> values.forEach(value -> all.add(Map.entry(name, value))));
    return all;
  }

  private static List<String> values(Control control, String value) {
    if (value.isEmpty() || value.charAt(0) == EMPTY) {
      return List.of("");
    }
    if (value.charAt(0) == ABSENT) {
      return List.of();
    }
    if (value.charAt(0) == OFFERED && !control.offers().isEmpty()) {
      return value
          .chars()
          .skip(1)
          .mapToObj(one -> control.offers().get(one % control.offers().size()))
          .toList();
    }
    return List.of(value.replace(LINE_BREAK, '\n'));
  }
}
