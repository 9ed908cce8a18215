package rungwise.app.forms;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.Visitor;
import rungwise.clinic.audit.TrailLine;
import rungwise.clinic.audit.TrailSearch;
import rungwise.clinic.people.Account;
import rungwise.web.access.Proof;
import rungwise.web.access.Route;
import rungwise.web.access.Route.ByClock;
import rungwise.web.access.Routes;

/** While it is not known what time it is, no form of any page signs or opens anything. */
final class NothingSignedTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member EDUCATOR = DemoClinic.MEMBERS.get(2);
  private static final int HELD = 409;
  private static final String NOTHING = "Nothing was signed and nothing was saved";

  /**
   * What may be written by any clock: what somebody says or sees, what stops, who was here, and the
   * list of syringes, which knows no time.
   */
  private static final Set<String> TAKEN =
      Set.of(
          "access_taken",
          "course_opened",
          "examination_recorded",
          "flags_seen",
          "handed_over",
          "injection_reported",
          "observation_noted",
          "observation_started",
          "page_viewed",
          "plan_chosen",
          "report_unfinished",
          "call_page_printed",
          "call_written",
          "elsewhere_written",
          "life_written",
          "preparation_withdrawn",
          "report_withdrawn",
          "screened",
          "signed_in",
          "syringe_added",
          "syringe_withdrawn",
          "tablet_taken",
          "vial_befell");

  private final Clinic clinic = Clinic.thatWatchesItsClock();

  @AfterEach
  void close() {
    clinic.close();
  }

  /** Why it is not known what time it is. */
  enum Clock {
    NOBODY_HAS_CONFIRMED,
    IS_AHEAD_OF_THE_TIME_SOURCE,
    HAS_JUMPED
  }

  private void set(Clock clock) {
    switch (clock) {
      case NOBODY_HAS_CONFIRMED -> {}
      case IS_AHEAD_OF_THE_TIME_SOURCE ->
          clinic.watch().told(clinic.clock().instant().minus(Duration.ofDays(1)));
      case HAS_JUMPED -> clinic.clock().moveOn(Duration.ofDays(1));
    }
  }

  private static Stream<Route> held() {
    return Routes.TABLE.stream().filter(route -> route.clock() == ByClock.HELD);
  }

  private String address(Route route) {
    String course = clinic.opened().courses().findFirst().orElseThrow().id().text();
    return route
        .path()
        .replace("{version}", "1")
        .replace("/courses/{id}", "/courses/" + course)
        .replaceAll("\\{[a-z]+\\}", "00000000-0000-4000-8000-000000000001");
  }

  private long newest() {
    return clinic.opened().trail().find(TrailSearch.ALL, Long.MAX_VALUE, 1).getFirst().number();
  }

  private Set<String> kindsSince(long number) {
    return clinic.opened().trail().find(TrailSearch.ALL, Long.MAX_VALUE, 10_000).stream()
        .filter(line -> line.number() > number)
        .map(TrailLine::kind)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @ParameterizedTest
  @EnumSource
  void every_route_that_signs_says_so_and_holds_what_was_entered(Clock clock) {
    set(clock);
    Visitor prescriber = clinic.signedIn(PRESCRIBER);
    Visitor educator = clinic.signedIn(EDUCATOR);
    long before = newest();
    var wrong = new TreeMap<String, Integer>();

    held()
        .forEach(
            route -> {
              boolean isPrescribers = route.access().admits(account(PRESCRIBER));
              HttpResponse<String> answer =
                  (isPrescribers ? prescriber : educator)
                      .post("/account", address(route), Map.of("reason", "typed \"so\""));
              boolean isHeld =
                  answer.statusCode() == HELD
                      && answer.body().contains(NOTHING)
                      && answer.body().contains("value=\"typed &#34;so&#34;\"");
              if (!isHeld) {
                wrong.put(route.path(), answer.statusCode());
              }
            });

    assertThat(wrong).isEmpty();
    assertThat(kindsSince(before)).isSubsetOf("page_viewed");
  }

  private Account account(Member member) {
    return clinic.opened().people().list().stream()
        .filter(one -> one.signInName().text().equals(member.signInName()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void every_signature_is_among_the_routes_that_wait() {
    assertThat(Routes.TABLE)
        .filteredOn(route -> route.proof() == Proof.TO_SIGN)
        .isNotEmpty()
        .allSatisfy(route -> assertThat(route.clock()).isEqualTo(ByClock.HELD));
  }

  @Test
  void no_form_of_any_page_writes_anything_that_opens() {
    set(Clock.IS_AHEAD_OF_THE_TIME_SOURCE);
    long before = newest();
    var met = new TreeSet<String>();

    for (Member member : List.of(PRESCRIBER, EDUCATOR)) {
      Visitor visitor = clinic.signedIn(member);
      WalkedPages.of(visitor)
          .forEach((page, forms) -> forms.forEach(form -> send(visitor, form, met)));
    }

    assertThat(met).hasSizeGreaterThan(25);
    assertThat(kindsSince(before)).isSubsetOf(TAKEN).contains("report_unfinished", "tablet_taken");
  }

  /** As somebody fills it in who means it: what stands in it, and something where nothing does. */
  private void send(Visitor visitor, FilledForm form, Set<String> met) {
    String route = WalkedPages.routeOf(form.action());
    if (route.equals("/sign-out") || route.startsWith("/account")) {
      return;
    }
    if (!met.add(route)) {
      return; // the same form of another course says nothing more
    }
    for (boolean isLast : List.of(false, true)) {
      var fields = new ArrayList<Map.Entry<String, String>>();
      form.controls().stream()
          .filter(control -> !control.name().equals("_csrf"))
          .forEach(
              control ->
                  filled(control, isLast)
                      .forEach(value -> fields.add(Map.entry(control.name(), value))));
      visitor.postAll("/account", form.action(), fields);
    }
  }

  private List<String> filled(FilledForm.Control control, boolean isLast) {
    if (control.offers().isEmpty()) {
      boolean isEmpty = control.holds().stream().allMatch(String::isBlank);
      return isEmpty ? List.of(typed(control)) : control.holds();
    }
    return List.of(isLast ? control.offers().getLast() : control.offers().getFirst());
  }

  private String typed(FilledForm.Control control) {
    return switch (control.kind()) {
      case DATE -> "2026-03-01";
      case TEXT -> control.name().toLowerCase(Locale.ROOT).contains("time") ? "10:30" : "30";
      default -> "";
    };
  }
}
