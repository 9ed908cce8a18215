package rungwise.web.protocols;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.protocols.SignedProtocol;
import rungwise.clinic.titration.Titration;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.Reading;
import rungwise.web.page.Page;

/** The titration protocols. */
@Controller
final class ProtocolsController {

  private static final Logger LOG = LoggerFactory.getLogger(ProtocolsController.class);
  private static final String PAGE = "protocols/protocols";

  private final Protocols protocols;
  private final People people;
  private final Titration titration;
  private final ClinicTime time;

  ProtocolsController(Protocols protocols, People people, Titration titration, ClinicTime time) {
    this.protocols = protocols;
    this.people = people;
    this.titration = titration;
    this.time = time;
  }

  private ProtocolsPage.Words words() {
    return new ProtocolsPage.Words(
        time,
        id -> people.find(id).map(Account::fullName).orElse("the program"),
        titration.runningOn().entrySet().stream()
            .collect(Collectors.toMap(Map.Entry::getKey, entry -> entry.getValue().size())));
  }

  @GetMapping("/protocols")
  ModelAndView list(@AuthenticationPrincipal Account actor) {
    return Page.of(PAGE, ProtocolsPage.of(protocols, actor, words()));
  }

  @GetMapping("/protocols/courses")
  ModelAndView courses(@RequestParam(defaultValue = "") String of) {
    return protocols.signed().stream()
        .map(SignedProtocol::protocol)
        .filter(protocol -> protocol.key().equals(of))
        .findFirst()
        .map(
            protocol ->
                ProtocolCoursesPage.of(
                    protocol, titration.runningOn().getOrDefault(protocol.key(), List.of())))
        .map(page -> Page.of("protocols/courses", page))
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  @PostMapping("/protocols/{name}/{version}/sign")
  ModelAndView sign(
      @AuthenticationPrincipal Account actor,
      @PathVariable String name,
      @PathVariable int version) {
    return switch (protocols.signSample(actor, name, version)) {
      case Reading.Read<Protocol> read -> {
        LOG.info("Protocol {} signed by {}", read.value().key(), actor.id());
        yield Page.redirect("/protocols");
      }
      case Reading.Refused<Protocol> refused ->
          Page.refused(PAGE, ProtocolsPage.of(protocols, actor, words()).with(refused.faults()));
    };
  }
}
