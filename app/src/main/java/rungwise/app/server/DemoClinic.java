package rungwise.app.server;

import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Invitation;
import rungwise.clinic.people.People;
import rungwise.clinic.people.Role;

/** An invented clinic. Its passwords are public, so it is served on this machine only. */
public final class DemoClinic {

  public static final String NAME = "Harbour Lane Clinic (invented)";

  private static final Member ADMINISTRATOR =
      new Member("ines", "Ines Halloran", "paper-boat-under-lantern", Set.of(Role.ADMINISTRATOR));

  /** Everybody who has an account, the administrator first. */
  public static final List<Member> MEMBERS =
      List.of(
          ADMINISTRATOR,
          new Member(
              "tobias",
              "Tobias Wren",
              "seven-green-garden-gates",
              Set.of(Role.PRESCRIBER, Role.PROGRAMME_LEAD)),
          new Member(
              "maren", "Maren Okafor", "slow-river-early-train", Set.of(Role.NURSE_EDUCATOR)),
          new Member(
              "joel", "Joel Castellan", "warm-bread-north-window", Set.of(Role.ON_CALL_CLINICIAN)),
          new Member("petra", "Petra Lindqvist", "copper-kettle-long-road", Set.of(Role.AUDITOR)));

  private DemoClinic() {}

  /** Somebody who works in the invented clinic. */
  public record Member(String signInName, String fullName, String password, Set<Role> roles) {

    /** "Prescriber, Programme lead". */
    public String rolesInWords() {
      return Arrays.stream(Role.values())
          .filter(roles::contains)
          .map(Role::words)
          .collect(Collectors.joining(", "));
    }
  }

  /** Makes everybody's account in a clinic that has none, and tells its invented past. */
  public static void fill(OpenClinic clinic, StoryClock clock, ZoneId zone) {
    fillPeople(clinic.people());
    new DemoStory(clinic, clock, new ClinicTime(zone)).tell();
  }

  /** Makes everybody's account, and nothing else. */
  public static void fillPeople(People people) {
    Account administrator = fillFirst(people);
    MEMBERS.stream()
        .filter(member -> !member.equals(ADMINISTRATOR))
        .forEach(member -> invite(people, administrator, member));
  }

  /** Makes the administrator's account only. */
  public static Account fillFirst(People people) {
    return people
        .accept(
            people.firstStart().orElseThrow().text(),
            ADMINISTRATOR.signInName(),
            Optional.of(ADMINISTRATOR.fullName()),
            ADMINISTRATOR.password())
        .orThrow();
  }

  private static void invite(People people, Account administrator, Member member) {
    Invitation invitation =
        people
            .invite(administrator.id(), member.signInName(), member.fullName(), member.roles())
            .orThrow();
    people
        .accept(invitation.code().text(), member.signInName(), Optional.empty(), member.password())
        .orThrow();
  }
}
