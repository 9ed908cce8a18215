package rungwise.web.protocols;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.Protocols;
import rungwise.dosing.known.Protocol;
import rungwise.quantities.Reading;
import rungwise.web.page.Page;

/** The titration protocols. */
@Controller
final class ProtocolsController {

  private static final Logger LOG = LoggerFactory.getLogger(ProtocolsController.class);
  private static final String PAGE = "protocols/protocols";

  private final Protocols protocols;

  ProtocolsController(Protocols protocols) {
    this.protocols = protocols;
  }

  @GetMapping("/protocols")
  ModelAndView list(@AuthenticationPrincipal Account actor) {
    return Page.of(PAGE, ProtocolsPage.of(protocols, actor));
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
          Page.refused(PAGE, ProtocolsPage.of(protocols, actor).with(refused.faults()));
    };
  }
}
