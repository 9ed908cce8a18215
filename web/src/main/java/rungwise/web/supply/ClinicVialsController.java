package rungwise.web.supply;

import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.course.Vial;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.supply.ClinicVial;
import rungwise.clinic.supply.ClinicVials;
import rungwise.dosing.known.Component;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;

/** The vials that the clinic keeps for injections at a visit. */
@Controller
final class ClinicVialsController {

  private static final Logger LOG = LoggerFactory.getLogger(ClinicVialsController.class);
  private static final String LIST = "supply/clinic-vials";
  private static final String ONE = "supply/clinic-vial";
  private static final String NOTICE = "notice";

  private final ClinicVials vials;

  ClinicVialsController(ClinicVials vials) {
    this.vials = vials;
  }

  @GetMapping(ClinicVialsPage.PATH)
  ModelAndView list(@AuthenticationPrincipal Account actor, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    VialForm form = VialForm.empty(VialForm.NEW);
    return Page.of(LIST, ClinicVialsPage.of(vials.kept(), actor, notice, form, Faults.NONE));
  }

  @PostMapping(ClinicVialsPage.PATH)
  ModelAndView add(
      @AuthenticationPrincipal Account actor,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var form = new VialForm(VialForm.NEW, typed);
    return switch (vials.add(actor, form.draft())) {
      case Reading.Read<Vial> read -> done(actor, read.value(), "on record", carried);
      case Reading.Refused<Vial> refused ->
          Page.refused(
              LIST, ClinicVialsPage.of(vials.kept(), actor, "", form, places(form, refused)));
    };
  }

  @GetMapping(ClinicVialsPage.PATH + "/{id}")
  ModelAndView one(@AuthenticationPrincipal Account actor, @PathVariable String id) {
    VialForm form = VialForm.empty(VialForm.ADDENDUM);
    return Page.of(ONE, ClinicVialsPage.one(find(id), actor, form, Faults.NONE));
  }

  @PostMapping(ClinicVialsPage.PATH + "/{id}")
  ModelAndView amend(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var form = new VialForm(VialForm.ADDENDUM, typed);
    ClinicVial vial = find(id);
    return switch (vials.amend(actor, id, form.draft(), form.said(CourseChanges.REASON))) {
      case Reading.Read<Vial> read -> done(actor, read.value(), "amended", carried);
      case Reading.Refused<Vial> refused ->
          Page.refused(ONE, ClinicVialsPage.one(vial, actor, form, places(form, refused)));
    };
  }

  @PostMapping(ClinicVialsPage.PATH + "/{id}/finish")
  ModelAndView finish(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String why,
      RedirectAttributes carried) {
    ClinicVial vial = find(id);
    VialForm form = VialForm.empty(VialForm.ADDENDUM);
    return switch (vials.finish(actor, id, why)) {
      case Reading.Read<Vial> read -> done(actor, read.value(), "kept no longer", carried);
      case Reading.Refused<Vial> refused ->
          Page.refused(ONE, ClinicVialsPage.one(vial, actor, form, end(refused)));
    };
  }

  private static ModelAndView done(
      Account actor, Vial vial, String what, RedirectAttributes carried) {
    LOG.info("Vial of the clinic {} by {}", what, actor.id());
    carried.addFlashAttribute(NOTICE, "The vial of lot " + vial.lot() + " is " + what + ".");
    return Page.redirect(ClinicVialsPage.PATH);
  }

  private static Faults places(VialForm form, Reading.Refused<Vial> refused) {
    return form.placed(refused, Component.ALPROSTADIL);
  }

  private static Faults end(Reading.Refused<Vial> refused) {
    return Faults.of(refused.placed(), field -> VialForm.END);
  }

  private ClinicVial find(String id) {
    return vials.find(id).orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }
}
