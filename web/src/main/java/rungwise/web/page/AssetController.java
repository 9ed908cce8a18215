package rungwise.web.page;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Sends the style sheet and the fonts. They hold nothing about anybody, so browsers keep them. */
@Controller
final class AssetController {

  private static final String KEPT_30_DAYS = "max-age=2592000, public";

  private final Assets assets;

  AssetController(Assets assets) {
    this.assets = assets;
  }

  @GetMapping("/assets/{name}")
  void send(@PathVariable String name, HttpServletResponse response) throws IOException {
    Optional<Assets.Asset> found = assets.asset(name);
    if (found.isEmpty()) {
      response.sendError(HttpServletResponse.SC_NOT_FOUND);
      return;
    }
    response.setHeader(HttpHeaders.CACHE_CONTROL, KEPT_30_DAYS);
    response.setContentType(found.get().type());
    response.setContentLength(found.get().bytes().length);
    response.getOutputStream().write(found.get().bytes());
  }
}
