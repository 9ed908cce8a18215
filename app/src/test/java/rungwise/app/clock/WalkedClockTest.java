package rungwise.app.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.web.util.HtmlUtils;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.Visitor;

/**
 * The clock is walked from two days behind the truth to two days ahead of it, while two browsers
 * elsewhere say what time it is. No page gives a yes that rests on it, and nothing is signed.
 */
class WalkedClockTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final long MOST_HOURS = 48;
  private static final long STEP_HOURS = 8;

  /** Every sentence by which a page says that he may, for a reason that rests on the time. */
  private static final List<String> YES =
      List.of(
          "Nothing on record stops him",
          "the vial is in date",
          "Ready for home",
          "Nothing in the screening stops him");

  private static final List<String> OF_ALL =
      List.of("/", "/room", "/courses/new", "/clinic-vials", "/syringes", "/preparations");

  private static final List<String> OF_A_MAN =
      List.of(
          "",
          "/order",
          "/visit",
          "/screening",
          "/before-home",
          "/vial",
          "/forecast",
          "/injections",
          "/plan",
          "/record",
          "/report",
          "/reach",
          "/running",
          "/call");

  private final Clinic clinic = Clinic.thatWatchesItsClock();
  private final Instant truth = clinic.clock().instant();

  @AfterEach
  void close() {
    clinic.close();
  }

  private List<String> paths() {
    return Stream.concat(
            OF_ALL.stream(),
            clinic
                .opened()
                .courses()
                .flatMap(file -> OF_A_MAN.stream().map(page -> "/courses/" + file.id() + page)))
        .toList();
  }

  private void set(long hoursAhead) {
    Instant now = clinic.clock().instant();
    clinic.clock().moveOn(Duration.between(now, truth.plus(Duration.ofHours(hoursAhead))));
    clinic.watch().heard("192.0.2.7", truth);
    clinic.watch().heard("192.0.2.8", truth);
  }

  /** The pages that say yes, each with what it says. */
  private Map<String, Set<String>> yes() {
    Visitor prescriber = clinic.signedIn(PRESCRIBER);
    var found = new LinkedHashMap<String, Set<String>>();
    for (String path : paths()) {
      HttpResponse<String> page = prescriber.get(path);
      assertThat(page.statusCode()).as(path).isIn(200, 404);
      String body = HtmlUtils.htmlUnescape(page.body()).replace("\u2060", "");
      var said = new TreeSet<String>(YES.stream().filter(body::contains).toList());
      if (!said.isEmpty()) {
        found.put(path, said);
      }
    }
    return found;
  }

  private static Stream<Long> wrongHours() {
    return LongStream.rangeClosed(-MOST_HOURS / STEP_HOURS, MOST_HOURS / STEP_HOURS)
        .map(step -> step * STEP_HOURS)
        .filter(hours -> hours != 0)
        .boxed();
  }

  @Test
  void no_page_says_yes_by_a_clock_that_others_know_to_be_wrong_and_each_does_by_the_truth() {
    set(0);
    Map<String, Set<String>> byTheTruth = yes();
    assertThat(byTheTruth.values().stream().flatMap(Set::stream).distinct())
        .as("every yes is there to be taken away")
        .containsExactlyInAnyOrderElementsOf(YES);

    wrongHours()
        .forEach(
            hours -> {
              set(hours);
              assertThat(yes()).as(hours + " hours ahead").isEmpty();
            });

    set(0);
    assertThat(yes()).isEqualTo(byTheTruth);
  }

  @Test
  void no_page_says_yes_before_anybody_has_confirmed_date_and_time() {
    assertThat(yes()).isEmpty();
  }

  /** The day on which somebody of that age was born, by the clock of the server. */
  private String born(int years, long hoursAhead) {
    return truth
        .plus(Duration.ofHours(hoursAhead))
        .atZone(java.time.ZoneOffset.UTC)
        .toLocalDate()
        .minusYears(years)
        .toString();
  }

  @Test
  void nobody_who_is_not_18_by_the_truth_is_taken_for_18_by_a_wrong_clock() {
    var faults = new ArrayList<Optional<String>>();
    for (long hours : List.of(24L, 48L)) {
      set(hours);
      Visitor prescriber = clinic.signedIn(PRESCRIBER);
      HttpResponse<String> answer =
          prescriber.fill(
              "/courses/new",
              Map.of(
                  "fullName", "Osric Vane",
                  "birthDate", born(18, hours),
                  "recordNumber", "HL-7001"));
      assertThat(answer.statusCode()).isEqualTo(422);
      faults.add(
          Optional.of(HtmlUtils.htmlUnescape(answer.body()))
              .filter(body -> body.contains("it is not known what day it is")));
    }
    assertThat(faults).allMatch(Optional::isPresent);
  }
}
