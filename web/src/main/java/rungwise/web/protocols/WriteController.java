package rungwise.web.protocols;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.ProtocolCase.Walk;
import rungwise.clinic.protocols.ProtocolDifference;
import rungwise.clinic.protocols.ProtocolRule;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.titration.Titration;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.Unusual;
import rungwise.quantities.Reading;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.protocols.WritePage.Checked;
import rungwise.web.start.StartChoices;

/** Writes a protocol of the clinic's own, from a sample or from one that is signed. */
@Controller
final class WriteController {

  private static final Logger LOG = LoggerFactory.getLogger(WriteController.class);
  private static final String PAGE = "protocols/write";
  private static final String CONFIRM = "confirm";

  private final Protocols protocols;
  private final Titration titration;
  private final StartChoices choices;

  WriteController(Protocols protocols, Titration titration, StartChoices choices) {
    this.protocols = protocols;
    this.titration = titration;
    this.choices = choices;
  }

  @GetMapping("/protocols/write")
  ModelAndView begin(@RequestParam(defaultValue = "") String from) {
    Protocol base = base(from);
    Map<String, Object> parts =
        new LinkedHashMap<>(
            protocols.parts(protocols.document(base.name(), base.version()).orElseThrow()));
    if (base.sample()) {
      parts.put("protocol", "our-" + base.name());
      parts.put("title", base.title() + ", as this clinic uses it");
    }
    ProtocolForm form = ProtocolFields.of(parts);
    return Page.of(PAGE, page(from, form, Faults.NONE, Optional.empty()));
  }

  @PostMapping("/protocols/write")
  ModelAndView check(
      @RequestParam(defaultValue = "") String from,
      @RequestParam MultiValueMap<String, String> typed) {
    Protocol base = base(from);
    var form = new ProtocolForm(new Typed(typed));
    String document = document(form);
    return switch (protocols.check(document)) {
      case Reading.Refused<Protocol> refused -> refused(from, form, refused.faults());
      case Reading.Read<Protocol> read -> {
        Checked checked = checked(read.value(), base, document, form);
        yield Page.of(PAGE, page(from, form, Faults.NONE, Optional.of(checked)));
      }
    };
  }

  @PostMapping("/protocols/write/sign")
  ModelAndView sign(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String from,
      @RequestParam MultiValueMap<String, String> typed) {
    Protocol base = base(from);
    var form = new ProtocolForm(new Typed(typed));
    String document = document(form);
    return switch (protocols.signWritten(actor, document, form.typed().all(CONFIRM))) {
      case Reading.Refused<Protocol> refused ->
          Page.refused(
              PAGE,
              page(
                  from,
                  form,
                  form.faults(refused.faults()),
                  protocols
                      .check(document)
                      .found()
                      .map(protocol -> checked(protocol, base, document, form))));
      case Reading.Read<Protocol> read -> {
        LOG.info("Protocol {} signed by {}", read.value().key(), actor.id());
        yield Page.redirect("/protocols");
      }
    };
  }

  private String document(ProtocolForm form) {
    String name = form.typed().text("protocol").strip();
    return protocols.write(form.parts(protocols.nextVersion(name)));
  }

  private ModelAndView refused(String from, ProtocolForm form, List<String> faults) {
    return Page.refused(PAGE, page(from, form, form.faults(faults), Optional.empty()));
  }

  private Checked checked(Protocol protocol, Protocol base, String document, ProtocolForm form) {
    CaseForm man = CaseForm.of(form.typed(), choices);
    Optional<Reading<Walk>> walk =
        man.isChosen() ? Optional.of(man.walk(protocol)) : Optional.empty();
    return new Checked(
        protocol.title() + ", version " + protocol.version(),
        ProtocolRule.of(protocol),
        ProtocolDifference.between(base, protocol),
        titration.reach().ofVersion(protocol),
        toConfirm(protocol, form),
        document,
        walk.flatMap(Reading::found),
        walk.map(Reading::faults).orElse(List.of()));
  }

  private static Optional<Choice> toConfirm(Protocol protocol, ProtocolForm form) {
    List<Choice.Option> numbers =
        Unusual.in(protocol).stream()
            .map(one -> new Choice.Option(one.number(), one.words(), "", false))
            .toList();
    return Optional.of(numbers)
        .filter(some -> !some.isEmpty())
        .map(
            some ->
                Choice.of(CONFIRM, "Confirm each of these numbers singly", some)
                    .withHint(
                        "Each goes past what was published, or more than doubles a dose. Compare it"
                            + " with its source, then tick it, or change it above.")
                    .withPicked(form.typed().all(CONFIRM)));
  }

  private WritePage page(String from, ProtocolForm form, Faults faults, Optional<Checked> checked) {
    return WritePage.of(
        from, form, protocols.samples(), CaseForm.of(form.typed(), choices), faults, checked);
  }

  private Protocol base(String key) {
    return protocols
        .ofKey(key)
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }
}
