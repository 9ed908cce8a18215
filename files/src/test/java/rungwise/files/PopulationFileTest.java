package rungwise.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.SamplePreparations;

final class PopulationFileTest {

  private static final String SOUND =
      """
      {"parameters": {"mu": {"estimate": 0.9, "se": 0.1},
                      "gamma": {"spinal_cord": {"estimate": -0.7, "se": 0.2}, "mixed": 0.15},
                      "omega": 0.85, "beta": 2.1, "c2": -1.3, "c4": 1.7,
                      "d0": 3.85, "d1": 0.55, "tau": 0.42},
       "reference_group": "vasculogenic",
       "groups": {"vasculogenic": 0.6, "spinal_cord": 0.2, "mixed": 0.2},
       "reference_preparation": "three-drug-30-1-10",
       "fitted_by": {"seed": 7}}
      """;

  @Test
  void numbers_are_read_plain_or_with_their_standard_error_and_other_keys_are_kept() {
    PopulationFile file = PopulationFile.read(SOUND).orThrow();

    assertThat(file.population().mu()).isEqualTo(0.9);
    assertThat(file.population().gammas())
        .isEqualTo(Map.of("vasculogenic", 0.0, "spinal_cord", -0.7, "mixed", 0.15));
    assertThat(file.population().meanOf("mixed")).contains(0.9 + 0.15);
    assertThat(file.population().meanOf("unheard_of")).isEmpty();
    assertThat(file.population().tau()).isEqualTo(0.42);
    assertThat(file.shares()).containsEntry("vasculogenic", 0.6);
    assertThat(file.referencePreparation()).isEqualTo("three-drug-30-1-10");
    assertThat(file.others()).isEqualTo(Map.of("fitted_by", Map.of("seed", 7.0)));
  }

  @Test
  void gammas_may_be_flat() {
    String flat =
        SOUND.replace(
            "\"gamma\": {\"spinal_cord\": {\"estimate\": -0.7, \"se\": 0.2}, \"mixed\": 0.15}",
            "\"gamma_spinal_cord\": -0.7, \"gamma_mixed\": {\"estimate\": 0.15, \"se\": 1}");

    String dotted = flat.replace("gamma_", "gamma.");

    assertThat(PopulationFile.read(flat).orThrow().population())
        .isEqualTo(PopulationFile.read(SOUND).orThrow().population());
    assertThat(PopulationFile.read(dotted).orThrow().population())
        .isEqualTo(PopulationFile.read(SOUND).orThrow().population());
  }

  @Test
  void flat_keys_with_a_point_and_numbers_with_an_underscore_are_the_same_parameters() {
    String flat =
        SOUND
            .replace(
                "\"gamma\": {\"spinal_cord\": {\"estimate\": -0.7, \"se\": 0.2}, \"mixed\": 0.15}",
                "\"gamma.spinal_cord\": -0.7, \"gamma.mixed\": {\"estimate\": 0.15, \"se\": 1}")
            .replace("\"c2\"", "\"c_2\"")
            .replace("\"c4\"", "\"c_4\"")
            .replace("\"d0\"", "\"d_0\"")
            .replace("\"d1\"", "\"d_1\"");

    assertThat(flat).contains("\"c_2\"", "\"d_1\"", "\"gamma.mixed\"");
    assertThat(PopulationFile.read(flat).orThrow().population())
        .isEqualTo(PopulationFile.read(SOUND).orThrow().population());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"c2\": -1.3|\"c2\": -1.3, \"c_2\": -1.2|parameters: c2 is given twice",
        "\"c2\": -1.3|\"c_3\": -1.3|parameters: unknown c_3; known are",
        "\"omega\"|\"gamma.mixed\": 0.1, \"omega\"|parameters: gamma of mixed is given twice",
        "\"tau\": 0.42|\"tau\": \"0.42\"|parameters, tau: must be a number",
        "\"tau\": 0.42|\"tau\": 0|parameters: tau is 0.0: give a number from 0.05 to 3.0",
        "\"beta\": 2.1|\"beta\": -2|parameters: beta is -2.0: give a number from 0.05 to 8.0",
        "\"d0\": 3.85, |''|parameters, d0: must be a number",
        "\"omega\": 0.85|\"omgea\": 0.85|parameters: unknown omgea; known are",
        "\"mixed\": 0.15|\"mixd\": 0.15|parameters, gamma: the group mixed is missing",
        "\"vasculogenic\",|\"Vasculo\",|reference_group: must be small letters and underscores",
        "\"mixed\": 0.15|\"vasculogenic\": 0.15, \"mixed\": 1|parameters, gamma: the reference",
        "\"fitted_by\"|\"groups\": {}, \"fitted_by\"|line 8: this is not JSON: Duplicate",
        "}}|}|line 9: this is not JSON: Unexpected end-of-input: expected close marker for Object",
        "}}|}} x|line 8: this is not JSON: Unrecognized token",
        "{\"parameters\"|[{\"parameters\"|line 1: a JSON object is expected",
      })
  void what_is_wrong_is_said_with_its_place(String sound, String broken, String fault) {
    String text = SOUND.replace(sound, broken);

    assertThat(text).isNotEqualTo(SOUND);
    assertThat(PopulationFile.read(text).faults()).anyMatch(one -> one.startsWith(fault));
  }

  @Test
  void what_comes_with_the_program_is_read_and_holds_every_group_of_a_course() {
    assertThat(ShippedPopulations.names()).contains(ShippedPopulations.DEFAULT);
    for (String name : ShippedPopulations.names()) {
      PopulationFile file =
          PopulationFile.read(ShippedPopulations.document(name).orElseThrow()).orThrow();

      assertThat(file.others()).containsEntry("name", name).containsEntry("signed", false);
      assertThat(SamplePreparations.of(file.referencePreparation())).isPresent();
      for (AetiologyGroup group : AetiologyGroup.values()) {
        assertThat(file.population().meanOf(group.token())).as(group.token()).isPresent();
      }
    }
    assertThat(ShippedPopulations.document("none")).isEmpty();
  }

  @Test
  void a_group_that_is_not_known_needs_no_more_than_any_other_group() {
    for (String name : ShippedPopulations.names()) {
      Map<String, Double> gammas =
          PopulationFile.read(ShippedPopulations.document(name).orElseThrow())
              .orThrow()
              .population()
              .gammas();

      assertThat(gammas.values()).allMatch(gamma -> gamma >= gammas.getOrDefault("unknown", 9.0));
    }
  }
}
