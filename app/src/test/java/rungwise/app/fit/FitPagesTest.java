package rungwise.app.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.math.BigDecimal;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.Visitor;
import rungwise.clinic.people.Role;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.InUseRule;
import rungwise.files.history.HistoryFile;

/**
 * A fit to courses over HTTP: the 60 courses of reference/fit/n60.csv.gz are brought in, and what
 * the page says must be what SciPy finds (reference/fit_scipy.txt).
 */
class FitPagesTest {

  private static final Path REFERENCE = Path.of("..", "reference");
  private static final String FORM = "/populations/fit";
  private static final String RUN = FORM + "/run";
  private static final String RESULT = FORM + "/result";
  private static final String ID = SamplePreparations.ALPROSTADIL_20.id().value();
  private static final Duration LONGEST = Duration.ofMinutes(4);

  private static final List<Map.Entry<String, String>> ALL =
      List.of(
          Map.entry("reference", ID),
          Map.entry("groups", "vasculogenic"),
          Map.entry("groups", "neurogenic"),
          Map.entry("files", "yes"));

  private final Clinic clinic = Clinic.withEverybody();
  private final Visitor lead = clinic.signedIn(DemoClinic.MEMBERS.get(1));

  @BeforeEach
  void bringIn() throws IOException {
    var people = clinic.opened().people();
    clinic
        .opened()
        .formulary()
        .addSample(
            people.list().stream()
                .filter(account -> account.may(Role.PROGRAMME_LEAD))
                .findFirst()
                .orElseThrow()
                .id(),
            SamplePreparations.ALPROSTADIL_20.id(),
            new InUseRule.NotStated())
        .orThrow();
    bringIn("n60");
  }

  private void bringIn(String name) throws IOException {
    Path file = REFERENCE.resolve("fit").resolve(name + ".csv.gz");
    var survey = HistoryFile.survey(file.toString(), Files.readAllBytes(file));
    var imports = clinic.opened().pastImports();
    imports.commit(imports.plan(survey.histories()), name, done -> {});
  }

  @AfterEach
  void close() {
    clinic.close();
  }

  private HttpResponse<String> ended() throws InterruptedException {
    Instant end = Instant.now().plus(LONGEST);
    HttpResponse<String> page = lead.get(RESULT);
    while (page.body().contains("The fit is running") && Instant.now().isBefore(end)) {
      assertThat(page.headers().firstValue("Refresh")).hasValue("3");
      assertThat(page.body()).contains("<progress");
      Thread.sleep(200);
      page = lead.get(RESULT);
    }
    return page;
  }

  /** The estimate and standard error of a parameter, as the page's table has them. */
  private static List<BigDecimal> shown(String page, String parameter) {
    Matcher matcher =
        Pattern.compile(
                "<th scope=\"row\">"
                    + Pattern.quote(parameter)
                    + " <.*?Estimate\">(-?[0-9.]+)<.*?error\">([0-9.]+)<",
                Pattern.DOTALL)
            .matcher(page);
    assertThat(matcher.find()).as(parameter).isTrue();
    return List.of(new BigDecimal(matcher.group(1)), new BigDecimal(matcher.group(2)));
  }

  private static List<String[]> ofScipy() throws IOException {
    return Files.readAllLines(REFERENCE.resolve("fit_scipy.txt"), StandardCharsets.UTF_8).stream()
        .map(line -> line.split(" ", -1))
        .filter(words -> words[0].equals("n60") && !words[1].equals("logLik"))
        .toList();
  }

  private static void assertSaysWhatScipyFinds(String page) throws IOException {
    assertThat(ofScipy()).hasSize(9);
    for (String[] words : ofScipy()) {
      List<BigDecimal> shown = shown(page, words[1]);
      assertThat(shown.getFirst().doubleValue())
          .isCloseTo(Double.parseDouble(words[2]), within(0.00051));
      assertThat(shown.getLast().doubleValue())
          .isCloseTo(Double.parseDouble(words[3]), within(0.00051));
    }
  }

  @Test
  void a_fit_is_run_looked_at_and_signed_and_says_what_scipy_finds() throws Exception {
    HttpResponse<String> counted = lead.postAll(FORM, FORM, ALL);
    assertThat(counted.statusCode()).isEqualTo(200);
    assertThat(counted.body()).contains("60 courses with 404 injections");

    assertThat(Visitor.location(lead.postAll(FORM, RUN, ALL))).isEqualTo(RESULT);
    HttpResponse<String> result = ended();

    assertThat(result.body())
        .contains("Nothing was found that speaks against signing it.")
        .contains("404 injections of 60 courses", "No population in use can be set beside it.");
    assertSaysWhatScipyFinds(result.body());
    Matcher held = Pattern.compile("name=\"fit\" value=\"([0-9a-f]+)\"").matcher(result.body());
    assertThat(held.find()).isTrue();
    String fit = held.group(1);
    HttpResponse<String> refused =
        lead.post(
            RESULT, FORM + "/sign", Map.of("fit", fit, "name", "Our Men", "preparations", ""));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("name: \"Our Men\" was given", "choose at least one");
    HttpResponse<String> signed =
        lead.post(
            RESULT, FORM + "/sign", Map.of("fit", fit, "name", "our-men", "preparations", ID));
    assertThat(Visitor.location(signed)).isEqualTo("/populations");
    assertThat(lead.get("/populations").body())
        .contains("our-men version 1", "Fitted to the reports of this clinic's own men.");

    String document =
        clinic.opened().populations().find("our-men", 1).orElseThrow().signed().document();
    assertThat(document).contains("\"fitted_here\"", "60 courses with 404 injections");
    HttpResponse<String> pasted =
        lead.fill("/populations/new", Map.of("name", "theirs", "document", document));
    assertThat(pasted.statusCode()).isEqualTo(422);
    assertThat(pasted.body()).contains("The document says that it was fitted here.");
  }

  @Test
  void a_fit_that_doubts_itself_says_why_and_cannot_be_signed() throws Exception {
    var few = new ArrayList<>(ALL);
    few.removeIf(field -> field.getValue().equals("vasculogenic"));
    assertThat(lead.postAll(FORM, FORM, few).body())
        .contains("A fit to fewer than 60 courses is not offered for signing.");

    lead.postAll(FORM, RUN, few);
    HttpResponse<String> result = ended();

    assertThat(result.body())
        .contains("It cannot be signed.", "courses: a fit is offered for signing from 60 on.")
        .doesNotContain("Sign this fit for use");
    HttpResponse<String> forced =
        lead.post(FORM, FORM + "/sign", Map.of("name", "our-men", "preparations", ID));
    assertThat(forced.statusCode()).isEqualTo(422);
    assertThat(forced.body()).contains("There is no fit that could be signed");
    assertThat(clinic.opened().populations().signed()).isEmpty();
  }

  @Test
  void a_fit_is_stopped_and_leaves_nothing_behind() throws Exception {
    bringIn("n5000");
    String before = clinic.whole().toString();
    lead.postAll(FORM, RUN, ALL);
    assertThat(lead.get(RESULT).body()).contains("The fit is running");
    HttpResponse<String> second = lead.postAll(FORM, RUN, ALL);
    assertThat(second.statusCode()).isEqualTo(422);
    assertThat(second.body()).contains("A fit is running: stop it first");

    lead.post(RESULT, FORM + "/stop", Map.of());

    assertThat(ended().body()).contains("The fit was stopped", "Nothing of it was kept.");
    assertThat(clinic.whole().toString()).isEqualTo(before);
  }

  @Test
  void what_is_wrong_with_a_choice_is_said_at_once() {
    HttpResponse<String> refused =
        lead.postAll(
            FORM,
            FORM,
            List.of(
                Map.entry("reference", "none"),
                Map.entry("from", "2026-13-01"),
                Map.entry("to", "soon")));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body())
        .contains("reference: choose one", "groups: choose at least one", "from: ", "to: ");

    HttpResponse<String> none =
        lead.postAll(
            FORM, RUN, List.of(Map.entry("reference", ID), Map.entry("groups", "psychogenic")));
    assertThat(none.statusCode()).isEqualTo(422);
    assertThat(none.body()).contains("There are 0 such courses");
    assertThat(lead.get(RESULT).body()).contains("None was run since the server was started.");
  }
}
