package rungwise.web.page;

import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.view.RedirectView;

/** Names the template and the view record of an answer. */
public final class Page {

  private Page() {}

  /**
   * A page that answers what was asked.
   *
   * @param template its path below the template folder, without the ending
   * @param view the record the template takes as "page"
   */
  public static ModelAndView of(String template, Object view) {
    return new ModelAndView("jte:" + template, "page", view);
  }

  /** A form shown again because of what is wrong with it. */
  public static ModelAndView refused(String template, Object view) {
    return of(template, view, HttpStatus.UNPROCESSABLE_CONTENT);
  }

  /** A page with another status than 200. */
  public static ModelAndView of(String template, Object view, HttpStatus status) {
    ModelAndView answer = of(template, view);
    answer.setStatus(status);
    return answer;
  }

  /** The redirect that ends each accepted form, so that going back never sends it again. */
  public static ModelAndView redirect(String path) {
    var view = new RedirectView(path);
    view.setStatusCode(HttpStatus.SEE_OTHER);
    view.setExpandUriTemplateVariables(false);
    view.setExposeModelAttributes(false);
    return new ModelAndView(view);
  }
}
