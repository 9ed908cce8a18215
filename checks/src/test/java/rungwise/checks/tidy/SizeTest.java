package rungwise.checks.tidy;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.checks.house.Repository;
import rungwise.checks.house.Sizes;

/** The largest file, method, line and package: a limit for each, and a ratchet below it. */
final class SizeTest {

  private static final String RATCHET = "checks/src/test/resources/size-ratchet.txt";
  private static final String PRESENT = "size-ratchet.txt";

  @ParameterizedTest
  @CsvSource({"file, 400", "method, 40", "line, 100", "package, 20"})
  void nothing_is_larger_than_the_limit(String name, int limit) {
    Sizes.Largest largest = Sizes.of(name);

    assertThat(largest.size()).as("%s", largest).isLessThanOrEqualTo(limit);
  }

  /** Growth must be seen, and what has become smaller must stay so. */
  @ParameterizedTest
  @ValueSource(strings = {"file", "method", "line", "package"})
  void the_largest_is_as_large_as_the_ratchet_says(String name) throws IOException {
    write();
    Sizes.Largest largest = Sizes.of(name);

    assertThat(largest.size())
        .as(
            "%s. If it grew, make it smaller, or raise the number in %s and say why in the commit."
                + " If it fell: cp checks/target/%s %s",
            largest, RATCHET, PRESENT, RATCHET)
        .isEqualTo(ratchet().get(name));
  }

  private static Map<String, Integer> ratchet() {
    return Repository.file(RATCHET).lines().stream()
        .map(line -> List.of(line.split(" ", -1)))
        .collect(Collectors.toMap(List::getFirst, line -> Integer.valueOf(line.get(1))));
  }

  private static void write() throws IOException {
    String text =
        Sizes.present().stream()
            .map(largest -> largest.name() + " " + largest.size() + "\n")
            .collect(Collectors.joining());
    Path written = Path.of("target").resolve(PRESENT);
    Files.createDirectories(written.toAbsolutePath().getParent());
    Files.writeString(written, text, StandardCharsets.UTF_8);
  }
}
