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
import rungwise.quantities.Reading;

/** Reads the form of a vial; all faults at once. */
final class VialReading {

  private static final int LONGEST = 60;
  private static final int MOST_DAYS = 365;

  private final List<String> faults = new ArrayList<>();

  private VialReading() {}

  static Reading<Vial> of(VialDraft draft) {
    return new VialReading().read(draft);
  }

  private Reading<Vial> read(VialDraft draft) {
    String lot = text(draft.lot(), "the lot");
    if (lot.isEmpty()) {
      faults.add("Enter the lot, as the label says it.");
    }
    String device = text(draft.device(), "the device");
    List<Ingredient> ingredients = ingredients(draft);
    Optional<LocalDate> made = date("Made", draft.made());
    Optional<LocalDate> beyondUse = date("Beyond-use date", draft.beyondUse());
    if (draft.beyondUse().isBlank()) {
      faults.add("Enter the beyond-use date: without it no dose may be drawn.");
    }
    Optional<LocalDate> opened = date("Opened", draft.opened());
    Optional<LocalTime> openedAt = clock(draft.openedAt());
    if (openedAt.isPresent() && draft.opened().isBlank()) {
      faults.add("Opened: enter the day too, or leave the time empty.");
    }
    Optional<Integer> days = days(draft.daysInUse().strip());
    if (made.isPresent() && beyondUse.filter(made.get()::isAfter).isPresent()) {
      faults.add("It cannot be made after its beyond-use date: check both dates.");
    }
    if (made.isPresent() && opened.filter(made.get()::isAfter).isPresent()) {
      faults.add("It cannot be opened before it was made: check both dates.");
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

  private String text(String typed, String what) {
    String text = typed.strip();
    if (text.length() > LONGEST) {
      faults.add("Write at most " + LONGEST + " characters for " + what + ".");
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
      strength.faults().stream()
          .map(fault -> component.fullName() + ": " + fault)
          .forEach(faults::add);
      strength
          .found()
          .map(one -> new Ingredient(component, one, Optional.empty()))
          .ifPresent(found::add);
    }
    if (found.isEmpty() && faults.isEmpty()) {
      faults.add("Enter the strength of each component, as the label says it.");
    }
    return found;
  }

  private Optional<LocalDate> date(String what, String typed) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    Reading<LocalDate> date = ClinicTime.readDate(typed);
    date.faults().stream().map(fault -> what + ": " + fault).forEach(faults::add);
    return date.found();
  }

  private Optional<LocalTime> clock(String typed) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    Reading<LocalTime> clock = ClockText.read(typed);
    clock.faults().stream().map(fault -> "Opened at: " + fault).forEach(faults::add);
    return clock.found();
  }

  private Optional<Integer> days(String typed) {
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    boolean isNumber = typed.matches("[1-9][0-9]{0,2}");
    if (!isNumber || Integer.parseInt(typed) > MOST_DAYS) {
      faults.add("Days of use once opened: a whole number from 1 to " + MOST_DAYS + ".");
      return Optional.empty();
    }
    return Optional.of(Integer.parseInt(typed));
  }
}
