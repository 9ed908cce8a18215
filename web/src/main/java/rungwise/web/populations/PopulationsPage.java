package rungwise.web.populations;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.Role;
import rungwise.clinic.populations.PopulationReader;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * Every population that was signed, and those that come with the program.
 *
 * @param isLead whether whoever looks may sign and withdraw
 */
public record PopulationsPage(
    Faults faults, List<Line> signed, List<ShippedLine> shipped, boolean isLead) {

  /**
   * One that was signed.
   *
   * @param state whether it is in use, and for what
   * @param withdrawPath where it is taken out of use; empty if it is not in use
   */
  public record Line(
      String title,
      String state,
      String signed,
      String caveat,
      List<String> preparations,
      String withdrawPath,
      Field reason) {
    public Line {
      preparations = List.copyOf(preparations);
    }

    /** Whether its form was sent and refused. */
    public boolean isRefused() {
      return !reason.value().isEmpty();
    }

    private Line refused(String typed) {
      return new Line(
          title, state, signed, caveat, preparations, withdrawPath, reason.withValue(typed));
    }
  }

  /** One that comes with the program. */
  public record ShippedLine(String name, String path, String caveat, String preparation) {}

  /** What is known around the documents. */
  record Words(ClinicTime time, Function<AccountId, String> names) {}

  public PopulationsPage {
    signed = List.copyOf(signed);
    shipped = List.copyOf(shipped);
  }

  static PopulationsPage of(Populations populations, Account actor, Words words) {
    return new PopulationsPage(
        Faults.NONE,
        populations.signed().reversed().stream().map(one -> line(one, words)).toList(),
        populations.shipped().stream().map(one -> shipped(populations, one)).toList(),
        actor.may(Role.PROGRAMME_LEAD));
  }

  /** The same after one was not withdrawn, with the reason that was typed. */
  PopulationsPage refused(String key, String reason, Reading.Refused<?> refused) {
    return new PopulationsPage(
        Faults.ofForm(refused.faults()),
        signed.stream().map(one -> one.title().equals(key) ? one.refused(reason) : one).toList(),
        shipped,
        isLead);
  }

  private static ShippedLine shipped(Populations populations, PopulationReader.Shipped one) {
    var sheet = populations.look(one.document()).orThrow();
    return new ShippedLine(
        one.name(),
        "/populations/shipped/" + one.name(),
        sheet.document().origin().caveat(),
        sheet.reference().composition());
  }

  private static Line line(SignedPopulation one, Words words) {
    String path = "/populations/" + one.signed().name() + "/" + one.signed().version();
    return new Line(
        one.key(),
        state(one, words),
        "Signed by "
            + words.names().apply(one.signed().by())
            + ", "
            + words.time().words(one.signed().at())
            + ".",
        one.document().origin().caveat(),
        one.preparations().stream().map(Preparation::toString).toList(),
        one.isInUse() ? path + "/withdraw" : "",
        Field.of(Field.Kind.TEXT, "reason", "Why it is withdrawn"));
  }

  private static String state(SignedPopulation one, Words words) {
    if (one.withdrawn().isPresent()) {
      var withdrawn = one.withdrawn().get();
      return "Withdrawn by "
          + words.names().apply(withdrawn.by())
          + ", "
          + words.time().words(withdrawn.at())
          + ": "
          + withdrawn.reason();
    }
    return one.isInUse()
        ? "In use for "
            + one.inUseFor().stream().map(Preparation::name).collect(Collectors.joining(", "))
            + "."
        : "Replaced: it is no longer asked.";
  }
}
