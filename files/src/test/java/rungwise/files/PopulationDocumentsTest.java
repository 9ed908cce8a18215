package rungwise.files;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rungwise.clinic.populations.Origin;

final class PopulationDocumentsTest {

  private final PopulationDocuments documents = new PopulationDocuments();

  private Origin originOf(String document) {
    return documents.read(document).orThrow().origin();
  }

  private static String shipped(String name) {
    return ShippedPopulations.document(name).orElseThrow();
  }

  @Test
  void what_a_document_rests_on_is_told_by_its_parameters_not_by_its_name() {
    String published = shipped(ShippedPopulations.DEFAULT);
    String assumed = shipped(ShippedPopulations.ASSUMED);

    assertThat(originOf(published)).isEqualTo(Origin.PUBLISHED_SUMMARIES);
    assertThat(originOf(assumed)).isEqualTo(Origin.ASSUMPTION);
    assertThat(originOf(assumed.replace("three-drug-assumed", "measured-here")))
        .isEqualTo(Origin.ASSUMPTION);
    assertThat(originOf(published.replace("\"beta\": 3.0", "\"beta\": 3.1")))
        .isEqualTo(Origin.BROUGHT_IN);
  }

  @Test
  void everything_that_comes_with_the_program_says_what_it_rests_on() {
    assertThat(documents.shipped())
        .isNotEmpty()
        .allSatisfy(one -> assertThat(originOf(one.document())).isNotEqualTo(Origin.BROUGHT_IN));
  }

  @Test
  void the_faults_of_a_document_are_those_of_its_reader() {
    assertThat(documents.read("{}").faults()).isEqualTo(PopulationFile.read("{}").faults());
  }

  @Test
  void a_fit_that_doubts_itself_is_not_taken_with_every_doubt_named() {
    String sound = shipped(ShippedPopulations.DEFAULT);
    String doubtful =
        sound.replaceFirst(
            "\\{", "{\"doubts\": [\"There are only 12 courses.\", \"It did not settle.\"],");

    assertThat(documents.read(doubtful).faults())
        .containsExactly(
            "doubts: the fit is not to be signed: There are only 12 courses.",
            "doubts: the fit is not to be signed: It did not settle.");
    assertThat(documents.read(sound.replaceFirst("\\{", "{\"doubts\": [],")).faults()).isEmpty();
  }
}
