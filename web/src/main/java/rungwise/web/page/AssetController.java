package rungwise.web.page;

import java.time.Duration;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Sends the style sheet and the fonts. They hold nothing about anybody, so browsers keep them. */
@Controller
final class AssetController {

  private static final int DAYS_KEPT = 30;

  private final Assets assets;

  AssetController(Assets assets) {
    this.assets = assets;
  }

  @GetMapping("/assets/{name}")
  ResponseEntity<byte[]> send(@PathVariable String name) {
    return assets
        .asset(name)
        .map(
            asset ->
                ResponseEntity.ok()
                    .cacheControl(CacheControl.maxAge(Duration.ofDays(DAYS_KEPT)).cachePublic())
                    .contentType(MediaType.parseMediaType(asset.type()))
                    .body(asset.bytes()))
        .orElseGet(() -> ResponseEntity.notFound().build());
  }
}
