package rungwise.web.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.Utf8ByteOutput;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;

/**
 * Writes pages from the templates that were compiled into the program.
 *
 * <p>A page is rendered whole before its first byte is sent: a template that fails leaves a
 * response that can still become an error page.
 */
public final class Templates {

  private final TemplateEngine engine = TemplateEngine.createPrecompiled(ContentType.Html);
  private final Frames frames;
  private final Frame bareFrame;

  /**
   * All templates.
   *
   * @param frames makes the frame of each page
   * @param assets gives the style sheet of pages that need no more than that
   */
  public Templates(Frames frames, Assets assets) {
    this.frames = frames;
    this.bareFrame = Frame.bare(assets.stylesheet());
  }

  /**
   * Writes one page.
   *
   * @param template its path below the template folder, without the ending, such as "people/list"
   * @param model what the template asks for; "frame" is added, what it does not ask for is left out
   */
  public void write(
      String template,
      Map<String, ?> model,
      HttpServletRequest request,
      HttpServletResponse response)
      throws IOException {
    write(template, model, frames.frameOf(request), response);
  }

  /** Writes a page that asks nothing of accounts and sessions, which may be what failed. */
  public void writeBare(String template, Map<String, ?> model, HttpServletResponse response)
      throws IOException {
    write(template, model, bareFrame, response);
  }

  private void write(
      String template, Map<String, ?> model, Frame frame, HttpServletResponse response)
      throws IOException {
    String file = template + ".jte";
    Map<String, Object> wanted = new HashMap<>(model);
    wanted.put("frame", frame);
    wanted.keySet().retainAll(engine.getParamInfo(file).keySet());
    var page = new Utf8ByteOutput();
    engine.render(file, wanted, page);
    response.setContentType("text/html;charset=UTF-8");
    response.setContentLength(page.getContentLength());
    page.writeTo(response.getOutputStream());
  }
}
