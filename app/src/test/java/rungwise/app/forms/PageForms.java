package rungwise.app.forms;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.web.util.HtmlUtils;

/** The links and the forms of a page, as a program that fills them in sees them. */
record PageForms(Set<String> links, List<PageForm> forms) {

  private static final Pattern LINK = Pattern.compile("<a [^>]*?href=\"(/[^\"#]*)\"");
  private static final Pattern FORM =
      Pattern.compile("(?s)<form([^>]*method=\"post\"[^>]*)>(.*?)</form>");
  private static final Pattern ACTION = Pattern.compile("action=\"([^\"]*)\"");
  private static final Pattern FIELD =
      Pattern.compile("(?s)<(input|select|textarea|button)\\b([^>]*)>");
  private static final Pattern NAME = Pattern.compile("\\bname=\"([^\"]*)\"");
  private static final Pattern VALUE = Pattern.compile("\\bvalue=\"([^\"]*)\"");

  /**
   * A form that is sent by post.
   *
   * @param hidden what it sends along unseen
   * @param fields the names of what a person fills in, with the values that the page offers
   */
  record PageForm(String action, Map<String, String> hidden, Map<String, List<String>> fields) {}

  static PageForms of(String path, String page) {
    Set<String> links = new LinkedHashSet<>();
    Matcher link = LINK.matcher(page);
    while (link.find()) {
      links.add(HtmlUtils.htmlUnescape(link.group(1)));
    }
    List<PageForm> forms = new ArrayList<>();
    Matcher form = FORM.matcher(page);
    while (form.find()) {
      Matcher action = ACTION.matcher(form.group(1));
      String to = action.find() ? HtmlUtils.htmlUnescape(action.group(1)) : path;
      forms.add(form(to.isEmpty() ? path : to, form.group(2)));
    }
    return new PageForms(links, forms);
  }

  private static PageForm form(String action, String inside) {
    Map<String, String> hidden = new LinkedHashMap<>();
    Map<String, List<String>> fields = new LinkedHashMap<>();
    Matcher field = FIELD.matcher(inside);
    while (field.find()) {
      Matcher name = NAME.matcher(field.group(2));
      if (!name.find()) {
        continue;
      }
      Matcher value = VALUE.matcher(field.group(2));
      String offered = value.find() ? HtmlUtils.htmlUnescape(value.group(1)) : "";
      if (field.group(2).contains("type=\"hidden\"")) {
        hidden.put(name.group(1), offered);
      } else {
        fields.computeIfAbsent(name.group(1), one -> new ArrayList<>()).add(offered);
      }
    }
    return new PageForm(action, hidden, fields);
  }
}
