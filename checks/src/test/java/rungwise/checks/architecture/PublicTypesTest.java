package rungwise.checks.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;

/** The public doors of the pure side are listed, so that a new one is a decision. */
final class PublicTypesTest {

  private static final String LIST = "checks/src/test/resources/public-types.txt";
  private static final String PRESENT = "public-types.txt";

  @Test
  void the_public_types_of_the_pure_modules_are_those_of_the_list() throws IOException {
    List<String> present =
        Classes.all().that(resideInAnyPackage(Classes.PURE)).stream()
            .filter(PublicTypesTest::isOpen)
            .map(JavaClass::getName)
            .sorted()
            .toList();
    Path written = Path.of("target").resolve(PRESENT);
    Files.createDirectories(written.toAbsolutePath().getParent());
    Files.writeString(written, String.join("\n", present) + "\n", StandardCharsets.UTF_8);

    assertThat(present)
        .as(
            "%s is not up to date. If each new public type is needed by another package: "
                + "cp checks/target/%s %s",
            LIST, PRESENT, LIST)
        .isEqualTo(Repository.file(LIST).lines());
  }

  /** Public, as are all types around it. */
  private static boolean isOpen(JavaClass type) {
    return type.getModifiers().contains(JavaModifier.PUBLIC)
        && !type.isAnonymousClass()
        && type.getEnclosingClass().map(PublicTypesTest::isOpen).orElse(true);
  }
}
