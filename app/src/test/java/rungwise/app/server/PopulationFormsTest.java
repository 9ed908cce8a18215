package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.dosing.known.SamplePreparations;

/** A population is brought in, looked at, signed and withdrawn over HTTP. */
class PopulationFormsTest {

  private static final String FORM = "/populations/new";
  private static final String DOCUMENT =
      """
      {"parameters": {"mu": 0.9, "gamma.mixed": 0.1, "gamma.unknown": -0.2,
                      "omega": 0.85, "beta": 2.1, "c_2": -1.3, "c_4": 1.7,
                      "d_0": 3.85, "d_1": 0.55, "tau": 0.42},
       "reference_group": "vasculogenic",
       "groups": {"vasculogenic": 0.6, "mixed": 0.2, "unknown": 0.2},
       "reference_preparation": "alprostadil-20"}
      """;

  private final Clinic clinic = Clinic.withDemoStory();
  private final Visitor lead = clinic.signedIn(DemoClinic.MEMBERS.get(1));

  @AfterEach
  void close() {
    clinic.close();
  }

  private String inUse() {
    return clinic
        .opened()
        .populations()
        .inUseFor(SamplePreparations.ALPROSTADIL_20.id())
        .map(one -> one.key())
        .orElse("none");
  }

  @Test
  void all_that_is_wrong_is_said_at_once_and_what_was_pasted_stays() {
    String broken = DOCUMENT.replace("\"tau\": 0.42", "\"tau\": 9, \"tou\": 1");

    HttpResponse<String> answer = lead.fill(FORM, Map.of("name", "Our Men", "document", broken));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("name: \"Our Men\" was given", "parameters: unknown tou")
        .contains("tau is 9.0", "\"gamma.mixed\"");
    assertThat(inUse()).isEqualTo("alprostadil-published version 1");
  }

  @Test
  void what_was_brought_in_is_read_then_signed_and_withdrawn() {
    HttpResponse<String> read = lead.fill(FORM, Map.of("name", "our-men", "document", DOCUMENT));
    assertThat(read.statusCode()).isEqualTo(200);
    assertThat(read.body())
        .contains("how well it fits the men of this clinic was not checked here")
        .contains("It says nothing of:", "Alprostadil 40");

    HttpResponse<String> without =
        lead.post(FORM, FORM + "/sign", Map.of("name", "our-men", "document", DOCUMENT));
    assertThat(without.statusCode()).isEqualTo(422);
    assertThat(without.body()).contains("choose at least one for which it is signed");

    HttpResponse<String> signed =
        lead.post(
            FORM,
            FORM + "/sign",
            Map.of("name", "our-men", "document", DOCUMENT, "preparations", "alprostadil-20"));
    assertThat(Visitor.location(signed)).isEqualTo("/populations");
    assertThat(inUse()).isEqualTo("our-men version 1");

    HttpResponse<String> withdrawn =
        lead.post(
            FORM, "/populations/our-men/1/withdraw", Map.of("reason", "made from too few men"));
    assertThat(Visitor.location(withdrawn)).isEqualTo("/populations");
    assertThat(inUse()).isEqualTo("none");
    assertThat(lead.get("/populations").body())
        .contains("Withdrawn by Tobias Wren", "made from too few men");
  }

  @Test
  void a_form_that_was_made_up_signs_nothing() {
    HttpResponse<String> answer =
        lead.post(
            FORM,
            "/populations/shipped/three-drug-assumed/sign",
            Map.of("preparations", "alprostadil-20"));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("is not known exactly here");
    assertThat(lead.get("/populations/shipped/none").statusCode()).isEqualTo(404);
  }
}
