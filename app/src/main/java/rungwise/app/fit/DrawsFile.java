package rungwise.app.fit;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import rungwise.dosing.draws.WeightedDraws;

/**
 * The draws of a posterior as comma-separated values (RFC 4180): a line for each, with its weight
 * and each parameter on its natural scale, such as {@code read.csv} of R and {@code csv} of Python
 * read.
 */
public final class DrawsFile {

  private static final String WEIGHT = "weight";

  private DrawsFile() {}

  /**
   * Writes a new file.
   *
   * @throws java.nio.file.FileAlreadyExistsException if there is one of this name
   * @throws IOException if it cannot be written
   */
  public static void write(Path file, WeightedDraws draws) throws IOException {
    try (Writer out =
        Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
      out.write(WEIGHT + "," + String.join(",", draws.names()) + "\n");
      for (int draw = 0; draw < draws.count(); draw++) {
        out.write(line(draws, draw) + "\n");
      }
    }
  }

  private static String line(WeightedDraws draws, int draw) {
    return IntStream.range(0, draws.names().size())
        .mapToObj(place -> Double.toString(draws.value(draw, place)))
        .collect(Collectors.joining(",", draws.weight(draw) + ",", ""));
  }
}
