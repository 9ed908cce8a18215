package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.http.HttpMethod;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.clinic.people.Role;
import rungwise.web.access.Routes;

/** Each role, and nobody, asks for each route of a real server. */
@TestInstance(Lifecycle.PER_CLASS)
class RolesAtTheDoorTest {

  private static final String TABLE = "roles.txt";
  private static final String PASSWORD = "seven quiet green lamps";
  private static final String NOT_OPEN = "This page is not open to you";
  private static final String NOTHING_SAVED = "Nothing was saved";
  private static final String SOME_ID = "00000000-0000-4000-8000-000000000001";

  /** The columns of the table, in which the head of the file names them. */
  private static final List<Role> COLUMNS =
      List.of(
          Role.PRESCRIBER,
          Role.NURSE_EDUCATOR,
          Role.ON_CALL_CLINICIAN,
          Role.PROGRAMME_LEAD,
          Role.ADMINISTRATOR,
          Role.AUDITOR);

  private static final int ROLES = Role.values().length;

  private final Clinic clinic = Clinic.withAdministrator();
  private final Map<Role, Visitor> visitors = new EnumMap<>(Role.class);

  /** One row: what the marks say of each role, and of nobody. */
  private record Row(HttpMethod method, String path, Set<Role> roles, boolean isForAnybody) {

    static Row of(String line) {
      String[] words = line.trim().split(" +", -1);
      String marks = words[2];
      assertThat(marks).hasSize(ROLES + 1);
      return new Row(
          HttpMethod.valueOf(words[0]),
          words[1],
          Arrays.stream(Role.values())
              .filter(role -> marks.charAt(COLUMNS.indexOf(role)) != '.')
              .collect(Collectors.toSet()),
          marks.charAt(ROLES) != '.');
    }

    String key() {
      return method + " " + path;
    }

    /** The path with something in the place of each variable. */
    String address() {
      return path.replace("{version}", "1").replaceAll("\\{[a-z]+\\}", SOME_ID);
    }
  }

  private static List<Row> rows() {
    try (InputStream in = RolesAtTheDoorTest.class.getResourceAsStream(TABLE)) {
      String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().filter(line -> !line.startsWith("#")).map(Row::of).toList();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @BeforeAll
  void invite() {
    People people = clinic.opened().people();
    Account administrator = people.list().getFirst();
    for (Role role : Role.values()) {
      var invitation =
          people
              .invite(administrator.id(), nameOf(role), "Name of " + nameOf(role), Set.of(role))
              .orThrow();
      people.accept(invitation.code().text(), nameOf(role), Optional.empty(), PASSWORD).orThrow();
    }
  }

  @AfterAll
  void close() {
    clinic.close();
  }

  private static String nameOf(Role role) {
    return "a." + role.token().replace('_', '-');
  }

  private Visitor visitor(Role role) {
    return visitors.computeIfAbsent(
        role,
        one -> {
          Visitor visitor = clinic.visitor();
          assertThat(visitor.signIn(nameOf(one), PASSWORD).statusCode()).isEqualTo(303);
          return visitor;
        });
  }

  private HttpResponse<String> ask(Visitor visitor, String pageWithForm, Row row) {
    return row.method().equals(HttpMethod.GET)
        ? visitor.get(row.address())
        : visitor.post(pageWithForm, row.address(), Map.of());
  }

  @Test
  void every_route_has_one_row_and_every_row_a_route() {
    List<String> routes =
        Routes.TABLE.stream().map(route -> route.method() + " " + route.path()).toList();

    assertThat(rows().stream().map(Row::key)).containsExactlyInAnyOrderElementsOf(routes);
  }

  @ParameterizedTest
  @EnumSource
  void a_role_reaches_its_routes_and_no_other(Role role) {
    // So that the tries of one role do not count for the next.
    clinic.clock().moveOn(Duration.ofMinutes(10));
    var wrong = new LinkedHashMap<String, Integer>();
    for (Row row : rows()) {
      HttpResponse<String> answer = ask(visitor(role), "/account", row);
      boolean isRefused = answer.statusCode() == 403 && answer.body().contains(NOT_OPEN);
      if (isRefused == row.roles().contains(role) || isSignedOut(answer)) {
        wrong.put(row.key(), answer.statusCode());
      }
      if (row.path().equals("/sign-out")) {
        visitors.remove(role);
      }
    }

    assertThat(wrong).isEmpty();
  }

  private static boolean isSignedOut(HttpResponse<String> answer) {
    return Visitor.location(answer).startsWith("/sign-in?next");
  }

  @Test
  void who_is_not_signed_in_reaches_the_door_only() {
    clinic.clock().moveOn(Duration.ofMinutes(10));
    Stream<Row> closed = rows().stream().filter(row -> !row.isForAnybody());
    Stream<Row> open = rows().stream().filter(Row::isForAnybody);

    assertThat(closed)
        .allSatisfy(
            row -> {
              HttpResponse<String> answer = ask(clinic.visitor(), "/sign-in", row);
              if (row.method().equals(HttpMethod.GET)) {
                assertThat(isSignedOut(answer)).as(row.key()).isTrue();
              } else {
                assertThat(answer.statusCode()).as(row.key()).isEqualTo(403);
                assertThat(answer.body()).as(row.key()).contains(NOTHING_SAVED);
              }
            });
    assertThat(open)
        .allSatisfy(
            row -> {
              HttpResponse<String> answer = ask(clinic.visitor(), "/sign-in", row);
              assertThat(isSignedOut(answer)).as(row.key()).isFalse();
              assertThat(answer.statusCode()).as(row.key()).isNotEqualTo(403);
            });
  }
}
