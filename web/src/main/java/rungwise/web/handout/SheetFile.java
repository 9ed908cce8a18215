package rungwise.web.handout;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.web.servlet.View;

/** A document as an answer: it is saved, and opened by what the reader opens such files with. */
final class SheetFile implements View {

  private final byte[] pdf;
  private final String name;

  SheetFile(byte[] pdf, String name) {
    this.pdf = pdf.clone();
    this.name = name;
  }

  @Override
  public void render(
      @Nullable Map<String, ?> model, HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    response.setContentType("application/pdf");
    response.setHeader(
        HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + ".pdf\"");
    response.setContentLength(pdf.length);
    response.getOutputStream().write(pdf);
  }
}
