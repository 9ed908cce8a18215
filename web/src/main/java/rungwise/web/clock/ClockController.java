package rungwise.web.clock;

import jakarta.servlet.http.HttpServletRequest;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.clock.ClockConfirming;
import rungwise.clinic.clock.ClockWatch;
import rungwise.clinic.people.Account;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Page;

/** Takes what browsers and people say of the time. */
@Controller
final class ClockController {

  private static final Logger LOG = LoggerFactory.getLogger(ClockController.class);
  private static final String TEMPLATE = "clock/clock";
  private static final String NOTICE = "notice";

  /** Milliseconds since 1970, of this age of the world. */
  private static final Pattern MILLISECONDS = Pattern.compile("[0-9]{12,14}");

  private final ClockConfirming confirming;
  private final ClockWatch watch;
  private final InstantSource clock;
  private final ClinicTime time;

  ClockController(
      ClockConfirming confirming, ClockWatch watch, InstantSource clock, ClinicTime time) {
    this.confirming = confirming;
    this.watch = watch;
    this.clock = clock;
    this.time = time;
  }

  @GetMapping("/clock")
  ModelAndView page(Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(TEMPLATE, page(notice, "", "", Faults.NONE));
  }

  @PostMapping("/clock")
  ModelAndView confirm(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String date,
      @RequestParam(defaultValue = "") String time,
      RedirectAttributes carried) {
    return switch (confirming.confirm(actor, date, time)) {
      case Reading.Read<Instant> read -> {
        LOG.info("Clock confirmed by {}", actor.id());
        carried.addFlashAttribute(
            NOTICE, "Date and time are confirmed: " + this.time.words(read.value()) + ".");
        yield Page.redirect("/clock");
      }
      case Reading.Refused<Instant> refused ->
          Page.refused(TEMPLATE, page("", date, time, new Faults(refused.placed())));
    };
  }

  private ClockPage page(String notice, String date, String at, Faults faults) {
    return new ClockPage(
        time.words(clock.instant()),
        notice,
        Field.of(Field.Kind.DATE, ClockConfirming.DATE, "Today's date")
            .withHint("As your own watch or telephone shows it.")
            .withValue(date)
            .withFaults(faults),
        Field.of(Field.Kind.TEXT, ClockConfirming.TIME, "The time now")
            .withHint("Hours and minutes, such as 14:05.")
            .withValue(at)
            .withFaults(faults),
        faults);
  }

  /** Browsers of this machine have its clock, so they are not asked. */
  @PostMapping("/clock/browser")
  ResponseEntity<Void> heard(
      @RequestParam(defaultValue = "") String now, HttpServletRequest request) {
    if (MILLISECONDS.matcher(now).matches() && isElsewhere(request)) {
      watch.heard(request.getRemoteAddr(), Instant.ofEpochMilli(Long.parseLong(now)));
    }
    return ResponseEntity.noContent().build();
  }

  private static boolean isElsewhere(HttpServletRequest request) {
    try {
      return !request.getRemoteAddr().equals(request.getLocalAddr())
          && !InetAddress.getByName(request.getRemoteAddr()).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }
}
