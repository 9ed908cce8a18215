package rungwise.web.protocols;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.Role;
import rungwise.clinic.protocols.ProtocolRule;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.protocols.SignedProtocol;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;

/** The protocols, each with every rule and its source. */
public record ProtocolsPage(
    Faults faults, List<Sheet> signed, List<Sheet> samples, boolean maySign) {

  /**
   * One protocol.
   *
   * @param writePath where a new one is written from it
   * @param courses how many courses run on it
   * @param coursesPath where they are named; that page is on record as a look at each of them
   * @param waits why it has to be signed anew; empty if it need not
   */
  public record Sheet(
      String title,
      String writePath,
      String signPath,
      boolean isSample,
      String signed,
      int courses,
      String coursesPath,
      List<String> waits,
      List<ProtocolRule> rules) {
    public Sheet {
      waits = List.copyOf(waits);
      rules = List.copyOf(rules);
    }
  }

  /**
   * What is known around the documents.
   *
   * @param courses how many courses run on a protocol, by its key
   */
  record Words(ClinicTime time, Function<AccountId, String> names, Map<String, Integer> courses) {
    String signed(SignedProtocol signed) {
      return "Signed for use here by "
          + names.apply(signed.by())
          + ", "
          + time.words(signed.at())
          + signed
              .protocol()
              .more()
              .from()
              .map(day -> "; it holds from " + ClinicTime.words(day))
              .orElse("");
    }
  }

  public ProtocolsPage {
    signed = List.copyOf(signed);
    samples = List.copyOf(samples);
  }

  static ProtocolsPage of(Protocols protocols, Account actor, Words words) {
    return new ProtocolsPage(
        Faults.NONE,
        protocols.signed().stream()
            .map(
                signed ->
                    sheet(
                        signed.protocol(),
                        words.signed(signed),
                        words.courses().getOrDefault(signed.protocol().key(), 0),
                        signed.waits()))
            .toList(),
        protocols.unsignedSamples().stream()
            .map(sample -> sheet(sample, "", 0, List.of()))
            .toList(),
        actor.may(Role.PRESCRIBER) || actor.may(Role.PROGRAMME_LEAD));
  }

  ProtocolsPage with(List<String> found) {
    return new ProtocolsPage(
        new Faults(found.stream().map(Fault::ofForm).toList()), signed, samples, maySign);
  }

  private static Sheet sheet(Protocol protocol, String signed, int courses, List<String> waits) {
    String key = URLEncoder.encode(protocol.key(), StandardCharsets.UTF_8);
    return new Sheet(
        protocol.title() + ", version " + protocol.version(),
        "/protocols/write?from=" + key,
        "/protocols/" + protocol.name() + "/" + protocol.version() + "/sign",
        protocol.sample(),
        signed,
        courses,
        "/protocols/courses?of=" + key,
        waits,
        ProtocolRule.of(protocol));
  }
}
