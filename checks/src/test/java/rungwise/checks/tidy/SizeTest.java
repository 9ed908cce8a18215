package rungwise.checks.tidy;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.checks.house.Repository;
import rungwise.checks.house.Sizes;

/** The largest file, method, line and package: a limit for each, and a ratchet below it. */
final class SizeTest {

  private static final String RATCHET = "checks/src/test/resources/size-ratchet.txt";
  private static final String PRESENT = "size-ratchet.txt";

  @ParameterizedTest
  @CsvSource({"FILE, 400", "METHOD, 40", "LINE, 100", "PACKAGE, 20"})
  void nothing_is_larger_than_the_limit(Sizes kind, int limit) {
    assertThat(kind.all()).isNotEmpty().filteredOn(size -> size.count() > limit).isEmpty();
  }

  /** Growth must be seen, and what has become smaller must stay so. */
  @ParameterizedTest
  @EnumSource
  void the_largest_is_as_large_as_the_ratchet_says(Sizes kind) throws IOException {
    write();

    assertThat(kind.largest().count())
        .as(
            "%s of %s. If it grew, make it smaller, or raise the number in %s and say why in the"
                + " commit. If it fell: cp checks/target/%s %s",
            kind, kind.largest(), RATCHET, PRESENT, RATCHET)
        .isEqualTo(ratchet().get(kind));
  }

  private static Map<Sizes, Integer> ratchet() {
    return Repository.file(RATCHET).lines().stream()
        .map(line -> List.of(line.split(" ", -1)))
        .collect(
            Collectors.toMap(
                line -> Sizes.valueOf(line.getFirst()), line -> Integer.valueOf(line.getLast())));
  }

  private static void write() throws IOException {
    String text =
        Arrays.stream(Sizes.values())
            .map(kind -> kind + " " + kind.largest().count() + "\n")
            .collect(Collectors.joining());
    Path written = Path.of("target").resolve(PRESENT);
    Files.createDirectories(written.toAbsolutePath().getParent());
    Files.writeString(written, text, StandardCharsets.UTF_8);
  }
}
