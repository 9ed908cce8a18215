package rungwise.app.forms;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.web.util.HtmlUtils;

/** A form of a page that is sent by post, with what stands in it. */
record FilledForm(String action, List<Control> controls) {

  private static final Pattern FORM =
      Pattern.compile("(?s)<form([^>]*method=\"post\"[^>]*)>(.*?)</form>");
  private static final Pattern CONTROL =
      Pattern.compile(
          "(?s)<input\\b([^>]*)>|<select\\b([^>]*)>(.*?)</select>"
              + "|<textarea\\b([^>]*)>(.*?)</textarea>");
  private static final Pattern OPTION = Pattern.compile("(?s)<option\\b([^>]*)>");

  /** What a control is filled in with. */
  enum Kind {
    HIDDEN,
    SECRET,
    TEXT,
    DATE,
    ONE_OF,
    SEVERAL_OF
  }

  /**
   * A control, or all radio buttons or boxes of one name.
   *
   * @param offers what can be picked
   * @param holds what is typed or picked now
   */
  record Control(Kind kind, String name, List<String> offers, List<String> holds) {

    private Control and(Control other) {
      return new Control(kind, name, joined(offers, other.offers), joined(holds, other.holds));
    }

    private static List<String> joined(List<String> one, List<String> other) {
      var all = new ArrayList<>(one);
      all.addAll(other);
      return all;
    }
  }

  static List<FilledForm> of(String path, String page) {
    var forms = new ArrayList<FilledForm>();
    Matcher form = FORM.matcher(page);
    while (form.find()) {
      String to = attribute("action", form.group(1)).filter(said -> !said.isEmpty()).orElse(path);
      forms.add(new FilledForm(to, controls(form.group(2))));
    }
    return forms;
  }

  /** Whether it is the same form, whatever stands in it. */
  boolean isLike(FilledForm other) {
    return action.equals(other.action)
        && controls.stream()
            .map(Control::name)
            .toList()
            .equals(other.controls.stream().map(Control::name).toList());
  }

  Optional<Control> control(String name) {
    return controls.stream().filter(one -> one.name().equals(name)).findFirst();
  }

  private static List<Control> controls(String inside) {
    var byName = new LinkedHashMap<String, Control>();
    Matcher found = CONTROL.matcher(inside);
    while (found.find()) {
      Control one =
          found.group(1) != null
              ? input(found.group(1))
              : found.group(2) != null
                  ? select(found.group(2), found.group(3))
                  : textarea(found.group(4), found.group(5));
      if (!one.name().isEmpty()) {
        byName.merge(one.name(), one, Control::and);
      }
    }
    return List.copyOf(byName.values());
  }

  private static Control input(String tag) {
    String name = attribute("name", tag).orElse("");
    String value = attribute("value", tag).orElse("");
    boolean isOnce = attribute("autocomplete", tag).equals(Optional.of("one-time-code"));
    Kind kind =
        isOnce
            ? Kind.SECRET
            : Map.of(
                    "hidden", Kind.HIDDEN,
                    "password", Kind.SECRET,
                    "date", Kind.DATE,
                    "radio", Kind.ONE_OF,
                    "checkbox", Kind.SEVERAL_OF)
                .getOrDefault(attribute("type", tag).orElse("text"), Kind.TEXT);
    boolean isPicked = kind == Kind.ONE_OF || kind == Kind.SEVERAL_OF;
    return new Control(
        kind,
        name,
        isPicked ? List.of(value) : List.of(),
        !isPicked || has("checked", tag) ? List.of(value) : List.of());
  }

  private static Control select(String tag, String inside) {
    var offers = new ArrayList<String>();
    var picked = new ArrayList<String>();
    Matcher option = OPTION.matcher(inside);
    while (option.find()) {
      String value = attribute("value", option.group(1)).orElse("");
      offers.add(value);
      if (has("selected", option.group(1))) {
        picked.add(value);
      }
    }
    if (picked.isEmpty() && !offers.isEmpty()) {
      picked.add(offers.getFirst());
    }
    return new Control(Kind.ONE_OF, attribute("name", tag).orElse(""), offers, picked);
  }

  private static Control textarea(String tag, String inside) {
    String text = HtmlUtils.htmlUnescape(inside);
    return new Control(Kind.TEXT, attribute("name", tag).orElse(""), List.of(), List.of(text));
  }

  private static boolean has(String name, String tag) {
    return Pattern.compile("\\s" + name + "(?=[\\s=/]|$)").matcher(tag).find();
  }

  private static Optional<String> attribute(String name, String tag) {
    Matcher found = Pattern.compile("\\s" + name + "=\"([^\"]*)\"").matcher(tag);
    return found.find() ? Optional.of(HtmlUtils.htmlUnescape(found.group(1))) : Optional.empty();
  }
}
