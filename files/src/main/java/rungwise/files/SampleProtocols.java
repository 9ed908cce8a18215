package rungwise.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The sample protocols that come with the program, each a document that a clinic may sign. */
public final class SampleProtocols {

  private static final List<String> NAMES =
      List.of("us-vial-syringe-label", "us-cartridge-label", "uk-label", "cautious-mixture");

  private SampleProtocols() {}

  /** The documents, as text. */
  public static List<String> documents() {
    return NAMES.stream().map(SampleProtocols::document).toList();
  }

  private static String document(String name) {
    String path = "samples/" + name + ".yaml";
    try (InputStream in = SampleProtocols.class.getResourceAsStream(path)) {
      return new String(Objects.requireNonNull(in, path).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
