package rungwise.clinic.supply;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClockText;
import rungwise.clinic.course.Vial;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialDates;
import rungwise.quantities.Concentration;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** Reads the form of a vial; all faults at once. */
final class VialReading {

  private static final int LONGEST = 60;
  private static final int MOST_DAYS = 365;

  private final List<Fault> faults = new ArrayList<>();

  private VialReading() {}

  static Reading<Vial> of(VialDraft draft) {
    return new VialReading().read(draft);
  }

  private Reading<Vial> read(VialDraft draft) {
    String lot = text(draft.lot(), VialDraft.LOT, "the lot");
    if (lot.isEmpty()) {
      add(VialDraft.LOT, "Enter the lot, as the label says it.");
    }
    String device = text(draft.device(), VialDraft.DEVICE, "the device");
    List<Ingredient> ingredients = ingredients(draft);
    Optional<LocalDate> made = date("Made", VialDraft.MADE, draft.made());
    Optional<LocalDate> beyondUse =
        date("Beyond-use date", VialDraft.BEYOND_USE, draft.beyondUse());
    if (draft.beyondUse().isBlank()) {
      add(VialDraft.BEYOND_USE, "Enter the beyond-use date: without it no dose may be drawn.");
    }
    Optional<LocalDate> opened = date("Opened", VialDraft.OPENED, draft.opened());
    Optional<LocalTime> openedAt = clock(draft.openedAt());
    if (openedAt.isPresent() && draft.opened().isBlank()) {
      add(VialDraft.OPENED, "Opened: enter the day too, or leave the time empty.");
    }
    Optional<Integer> days = days(draft.daysInUse().strip());
    if (made.isPresent() && beyondUse.filter(made.get()::isAfter).isPresent()) {
      add(VialDraft.MADE, "It cannot be made after its beyond-use date: check both dates.");
    }
    if (made.isPresent() && opened.filter(made.get()::isAfter).isPresent()) {
      add(VialDraft.OPENED, "It cannot be opened before it was made: check both dates.");
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return Reading.of(
        new Vial(
            lot,
            Preparation.compositionOf(ingredients),
            new VialDates(
                made, beyondUse.orElseThrow(), opened.map(day -> new Opening(day, openedAt)), days),
            device));
  }

  private void add(String field, String text) {
    faults.add(new Fault(field, text));
  }

  private String text(String typed, String field, String what) {
    String text = typed.strip();
    if (text.length() > LONGEST) {
      add(field, "Write at most " + LONGEST + " characters for " + what + ".");
    }
    return text;
  }

  private List<Ingredient> ingredients(VialDraft draft) {
    var found = new ArrayList<Ingredient>();
    for (Component component : Component.values()) {
      String typed = draft.strengths().getOrDefault(component, "").strip();
      if (typed.isEmpty()) {
        continue;
      }
      Reading<Concentration> strength =
          Concentration.parse(typed + " " + component.unit().word() + "/mL");
      strength
          .faults()
          .forEach(
              fault -> add(VialDraft.strengthOf(component), component.fullName() + ": " + fault));
      strength
          .found()
          .map(one -> new Ingredient(component, one, Optional.empty()))
          .ifPresent(found::add);
    }
    if (draft.strengths().values().stream().allMatch(String::isBlank)) {
      add(VialDraft.STRENGTHS, "Enter the strength of each component, as the label says it.");
    }
    return found;
  }

  private Optional<LocalDate> date(String what, String field, String typed) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    Reading<LocalDate> date = ClinicTime.readDate(typed);
    date.faults().forEach(fault -> add(field, what + ": " + fault));
    return date.found();
  }

  private Optional<LocalTime> clock(String typed) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    Reading<LocalTime> clock = ClockText.read(typed);
    clock.faults().forEach(fault -> add(VialDraft.OPENED_AT, "Opened at: " + fault));
    return clock.found();
  }

  private Optional<Integer> days(String typed) {
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    boolean isNumber = typed.matches("[1-9][0-9]{0,2}");
    if (!isNumber || Integer.parseInt(typed) > MOST_DAYS) {
      add(
          VialDraft.DAYS_IN_USE,
          "Days of use once opened: a whole number from 1 to " + MOST_DAYS + ".");
      return Optional.empty();
    }
    return Optional.of(Integer.parseInt(typed));
  }
}
