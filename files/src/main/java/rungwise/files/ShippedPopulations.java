package rungwise.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** The populations that come with the program. The model card tells how far each can be trusted. */
public final class ShippedPopulations {

  /** For alprostadil alone, from published summaries. */
  public static final String DEFAULT = "alprostadil-published";

  /** For a mixture of three drugs; an assumption. */
  public static final String ASSUMED = "three-drug-assumed";

  private static final List<String> NAMES = List.of(DEFAULT, ASSUMED);

  private ShippedPopulations() {}

  public static List<String> names() {
    return NAMES;
  }

  /** The document with that name, if there is one. */
  public static Optional<String> document(String name) {
    return NAMES.contains(name) ? Optional.of(text(name)) : Optional.empty();
  }

  private static String text(String name) {
    String path = "populations/" + name + ".json";
    try (InputStream in = ShippedPopulations.class.getResourceAsStream(path)) {
      return new String(Objects.requireNonNull(in, path).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
