package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.audit.TrailLine;
import rungwise.clinic.audit.TrailSearch;
import rungwise.clinic.people.Account;

class SecondFactorTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Pattern SIGN = Pattern.compile("action=\"(/protocols/[^\"]+/sign)\"");
  private static final Duration STEP = Duration.ofSeconds(30);
  private static final Duration IDLE = Duration.ofMinutes(15);
  private static final Duration SHIFT = Duration.ofHours(12);
  private static final String ASKS = "Give your second factor to go on";
  private static final String ASKS_TO_SET_UP = "Set up your second factor first";

  private final Clinic clinic = Clinic.thatAsksForSecondFactors();
  private final Visitor prescriber = clinic.signedIn(PRESCRIBER);

  @AfterEach
  void close() {
    clinic.close();
  }

  private static String firstSample(Visitor visitor) {
    var found = SIGN.matcher(visitor.get("/protocols").body());
    assertThat(found.find()).isTrue();
    return found.group(1);
  }

  private int signed() {
    return clinic.opened().protocols().signed().size();
  }

  private static HttpResponse<String> sign(Visitor visitor, Map<String, String> fields) {
    return visitor.post("/protocols", firstSample(visitor), fields);
  }

  private AuthenticatorApp setUp(Visitor visitor) {
    var app = AuthenticatorApp.typedFrom(visitor.get("/account/authenticator").body());
    HttpResponse<String> answer = visitor.fill("/account/authenticator", Map.of("code", code(app)));
    assertThat(Visitor.location(answer)).isEqualTo("/account");
    return app;
  }

  private String code(AuthenticatorApp app) {
    return app.codeAt(clinic.clock().instant());
  }

  private List<String> kinds() {
    return clinic.opened().trail().find(TrailSearch.ALL, Long.MAX_VALUE, 100).stream()
        .map(TrailLine::kind)
        .toList();
  }

  @Test
  void nobody_signs_before_a_second_factor_is_set_up_and_what_was_typed_is_kept() {
    HttpResponse<String> answer = sign(prescriber, Map.of("signReason", "typed \"words\""));

    assertThat(answer.statusCode()).isEqualTo(403);
    assertThat(answer.body())
        .contains(ASKS_TO_SET_UP)
        .contains("name=\"signReason\" value=\"typed &#34;words&#34;\"");
    assertThat(signed()).isZero();
  }

  @Test
  void setting_it_up_counts_for_this_shift_and_shows_eight_recovery_codes_once() {
    setUp(prescriber);

    String once = prescriber.get("/account").body();
    String again = prescriber.get("/account").body();

    assertThat(once.split("<li class=\"code\">", -1)).hasSize(9);
    assertThat(again).doesNotContain("<li class=\"code\">");
    assertThat(sign(prescriber, Map.of()).statusCode()).isEqualTo(303);
    assertThat(signed()).isOne();
  }

  @Test
  void another_browser_is_asked_and_goes_on_where_it_was() {
    AuthenticatorApp app = setUp(prescriber);
    clinic.clock().moveOn(STEP);
    Visitor other = clinic.signedIn(PRESCRIBER);

    HttpResponse<String> asked = sign(other, Map.of("signReason", "because"));
    HttpResponse<String> wrong =
        sign(other, Map.of("signReason", "because", "secondFactorCode", "000000"));
    HttpResponse<String> right =
        sign(other, Map.of("signReason", "because", "secondFactorCode", code(app)));

    assertThat(asked.statusCode()).isEqualTo(403);
    assertThat(asked.body()).contains(ASKS, "name=\"signReason\" value=\"because\"");
    assertThat(wrong.statusCode()).isEqualTo(403);
    assertThat(wrong.body()).contains("The code is not right", "value=\"because\"");
    assertThat(right.statusCode()).isEqualTo(303);
    assertThat(signed()).isOne();
  }

  @Test
  void it_is_asked_once_a_shift() {
    AuthenticatorApp app = setUp(prescriber);
    assertThat(sign(prescriber, Map.of()).statusCode()).isEqualTo(303);
    clinic.clock().moveOn(IDLE);

    assertThat(prescriber.get("/").statusCode()).isEqualTo(302);
    prescriber.signIn(PRESCRIBER.signInName(), PRESCRIBER.password());
    assertThat(sign(prescriber, Map.of()).statusCode()).as("after an idle end").isEqualTo(303);

    clinic.clock().moveOn(SHIFT.minus(IDLE));
    prescriber.signIn(PRESCRIBER.signInName(), PRESCRIBER.password());
    assertThat(sign(prescriber, Map.of()).body()).contains(ASKS);
    assertThat(sign(prescriber, Map.of("secondFactorCode", code(app))).statusCode()).isEqualTo(303);
  }

  @Test
  void signing_out_ends_the_shift() {
    setUp(prescriber);
    prescriber.post("/account", "/sign-out", Map.of());
    prescriber.signIn(PRESCRIBER.signInName(), PRESCRIBER.password());

    assertThat(sign(prescriber, Map.of()).body()).contains(ASKS);
  }

  @Test
  void a_colleague_at_the_same_browser_does_not_inherit_it() {
    setUp(prescriber);
    String shift = prescriber.cookie("rungwise-shift");
    Visitor other = clinic.visitor();
    other.keep("rungwise-shift", shift);
    other.signIn(Clinic.ADMINISTRATOR.signInName(), Clinic.ADMINISTRATOR.password());
    var app = AuthenticatorApp.typedFrom(other.get("/account/authenticator").body());
    other.fill("/account/authenticator", Map.of("code", code(app)));
    Visitor third = clinic.visitor();
    third.keep("rungwise-shift", shift);
    third.signIn(Clinic.ADMINISTRATOR.signInName(), Clinic.ADMINISTRATOR.password());

    assertThat(third.get("/account/authenticator").body()).contains(ASKS);
  }

  @Test
  void the_cookie_of_the_shift_is_out_of_reach_for_scripts_and_other_sites() {
    var app = AuthenticatorApp.typedFrom(prescriber.get("/account/authenticator").body());

    HttpResponse<String> answer =
        prescriber.fill("/account/authenticator", Map.of("code", code(app)));

    assertThat(answer.headers().allValues("Set-Cookie"))
        .anySatisfy(
            cookie ->
                assertThat(cookie)
                    .startsWith("rungwise-shift=")
                    .contains("HttpOnly", "SameSite=Strict", "Path=/", "Max-Age=43200"));
  }

  @Test
  void a_recovery_code_goes_on_once() {
    setUp(prescriber);
    var shown =
        Pattern.compile("<li class=\"code\">([^<]+)</li>")
            .matcher(prescriber.get("/account").body());
    assertThat(shown.find()).isTrue();
    Map<String, String> typed = Map.of("secondFactorCode", shown.group(1));

    assertThat(sign(clinic.signedIn(PRESCRIBER), typed).statusCode()).isEqualTo(303);
    assertThat(sign(clinic.signedIn(PRESCRIBER), typed).statusCode()).isEqualTo(403);
    assertThat(prescriber.get("/account").body()).contains("<dd>7</dd>");
  }

  @Test
  void the_sixth_wrong_code_has_to_wait_five_minutes_wherever_it_is_tried() {
    AuthenticatorApp app = setUp(prescriber);
    clinic.clock().moveOn(STEP);
    for (int tries = 0; tries < 5; tries++) {
      HttpResponse<String> wrong =
          sign(clinic.signedIn(PRESCRIBER), Map.of("secondFactorCode", "000000"));
      assertThat(wrong.statusCode()).isEqualTo(403);
    }
    Visitor other = clinic.signedIn(PRESCRIBER);

    HttpResponse<String> sixth = sign(other, Map.of("secondFactorCode", code(app)));

    assertThat(sixth.statusCode()).isEqualTo(429);
    assertThat(sixth.headers().firstValueAsLong("Retry-After")).hasValue(301);
    clinic.clock().moveOn(Duration.ofMinutes(5));
    assertThat(sign(other, Map.of("secondFactorCode", code(app))).statusCode()).isEqualTo(303);
  }

  @Test
  void a_code_in_an_address_is_not_taken() {
    AuthenticatorApp app = setUp(prescriber);
    clinic.clock().moveOn(STEP);
    Visitor other = clinic.signedIn(PRESCRIBER);

    String page = other.get("/account/authenticator?secondFactorCode=" + code(app)).body();
    HttpResponse<String> given =
        other.post(
            "/account",
            "/proof",
            Map.of("next", "/account/authenticator", "secondFactorCode", code(app)));

    assertThat(page).contains(ASKS);
    assertThat(Visitor.location(given)).isEqualTo("/account/authenticator");
    assertThat(other.get("/account/authenticator").body()).contains("code secret");
  }

  @Test
  void an_authenticator_is_not_exchanged_without_the_one_before() {
    setUp(prescriber);
    Visitor thief = clinic.signedIn(PRESCRIBER);

    assertThat(thief.get("/account/authenticator").body())
        .contains(ASKS)
        .doesNotContain("code secret");
    assertThat(thief.post("/account", "/account/recovery-codes", Map.of()).body())
        .contains(ASKS)
        .doesNotContain("<li class=\"code\">");
  }

  @Test
  void a_lost_device_is_reset_by_an_administrator_who_says_why() {
    setUp(prescriber);
    Visitor administrator = clinic.signedIn(Clinic.ADMINISTRATOR);
    Account account =
        clinic.opened().people().list().stream()
            .filter(found -> found.fullName().equals(PRESCRIBER.fullName()))
            .findFirst()
            .orElseThrow();
    String page = "/people/" + account.id() + "/second-factor";

    administrator.post("/people", "/people/" + account.id() + "/new-code", Map.of());
    assertThat(clinic.opened().secondFactors().standing(account.id()).isSetUp())
        .as("a code for a new password leaves the second factor as it is")
        .isTrue();
    HttpResponse<String> without = administrator.fill(page, Map.of("reason", " "));
    HttpResponse<String> reset = administrator.fill(page, Map.of("reason", "telephone stolen"));

    assertThat(without.statusCode()).isEqualTo(422);
    assertThat(reset.statusCode()).isEqualTo(303);
    assertThat(prescriber.get("/").statusCode()).as("signed out").isEqualTo(302);
    assertThat(clinic.opened().secondFactors().standing(account.id()).isSetUp()).isFalse();
    TrailLine entry = clinic.opened().trail().find(TrailSearch.ALL, Long.MAX_VALUE, 1).getFirst();
    assertThat(entry.kind()).isEqualTo("second_factor_reset");
    assertThat(entry.about()).isEqualTo(Optional.of(account.id()));
    assertThat(entry.reason()).contains("telephone stolen");
  }

  @Test
  void everything_about_it_is_on_record() {
    setUp(prescriber);
    Visitor other = clinic.signedIn(PRESCRIBER);
    sign(other, Map.of("secondFactorCode", "000000"));

    assertThat(kinds())
        .contains("authenticator_set_up", "recovery_codes_made", "second_factor_refused");
  }

  @Test
  void a_role_that_is_given_is_asked_for_it_once_the_administrator_has_one() {
    Visitor administrator = clinic.signedIn(Clinic.ADMINISTRATOR);
    Map<String, String> invitation =
        Map.of("fullName", "Oren Vale", "signInName", "oren", "roles", "auditor");

    assertThat(administrator.fill("/people/invite", invitation).statusCode()).isEqualTo(303);
    setUp(administrator);
    Visitor elsewhere = clinic.signedIn(Clinic.ADMINISTRATOR);

    assertThat(elsewhere.fill("/people/invite", invitation).body())
        .contains(ASKS, "value=\"Oren Vale\"");
  }

  @Test
  void a_clinic_may_ask_it_of_everybody_before_any_page() {
    try (var strict = Clinic.thatLetsNobodyIn()) {
      Visitor nurse = strict.signedIn(DemoClinic.MEMBERS.get(2));

      assertThat(nurse.get("/").body()).contains(ASKS_TO_SET_UP);
      assertThat(nurse.get("/preparations").statusCode()).isEqualTo(403);
      assertThat(nurse.get("/account").statusCode()).isEqualTo(200);
      var app = AuthenticatorApp.typedFrom(nurse.get("/account/authenticator").body());
      nurse.fill("/account/authenticator", Map.of("code", app.codeAt(strict.clock().instant())));
      assertThat(nurse.get("/").statusCode()).isEqualTo(200);
      assertThat(strict.signedIn(DemoClinic.MEMBERS.get(2)).get("/").body()).contains(ASKS);
    }
  }
}
