package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The notice names what is shipped, with its licence, as the build's bill of materials has it. */
final class NoticeTest {

  private static List<List<String>> shipped() {
    JsonNode bill = new JsonMapper().readTree(Repository.file("app/target/bom.json").text());
    return StreamSupport.stream(bill.path("components").spliterator(), /* parallel= */ false)
        .filter(one -> !one.path("group").asString().equals("rungwise"))
        .map(one -> List.of(nameOf(one), licencesOf(one)))
        .toList();
  }

  private static String nameOf(JsonNode one) {
    return one.path("group").asString() + ":" + one.path("name").asString();
  }

  private static String licencesOf(JsonNode one) {
    return StreamSupport.stream(one.path("licenses").spliterator(), /* parallel= */ false)
        .map(NoticeTest::licenceOf)
        .collect(Collectors.joining(" or "));
  }

  private static String licenceOf(JsonNode one) {
    JsonNode licence = one.path("license");
    return (licence.has("id") ? licence.path("id") : licence.path("name")).asString();
  }

  @Test
  void every_library_that_is_shipped_stands_in_the_notice_with_its_licence() {
    assertThat(shipped()).hasSizeGreaterThan(50);
    assertThat(MarkdownTable.of(Repository.file("NOTICE.md")).rows())
        .containsExactlyInAnyOrderElementsOf(shipped());
  }

  @Test
  void the_licence_is_whole() {
    assertThat(Repository.file("LICENSE").text())
        .contains("Apache License", "Version 2.0, January 2004", "END OF TERMS AND CONDITIONS");
  }
}
