package rungwise.clinic.supply;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.befell.VialWord;
import rungwise.clinic.befell.VialWord.Gone;
import rungwise.clinic.befell.VialWord.How;
import rungwise.clinic.befell.VialWord.Place;
import rungwise.clinic.befell.VialWord.Put;
import rungwise.clinic.befell.VialWord.Warm;
import rungwise.clinic.standing.CourseChanges;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** Reads what befell a vial. */
final class BefellReading {

  private static final int COLDEST = -40;
  private static final int WARMEST = 80;
  private static final int MOST_HOURS = 9999;

  private final List<Fault> faults = new ArrayList<>();

  private BefellReading() {}

  static Reading<VialWord> of(BefellDraft draft, LocalDate today) {
    return new BefellReading().read(draft, today);
  }

  private Reading<VialWord> read(BefellDraft draft, LocalDate today) {
    Optional<LocalDate> day = day(draft.day(), today);
    var celsius = whole(draft.celsius(), BefellDraft.CELSIUS, "Degrees", COLDEST, WARMEST);
    var least = whole(draft.least(), BefellDraft.LEAST, "Hours at least", 0, MOST_HOURS);
    var most = whole(draft.most(), BefellDraft.MOST, "Hours at most", 0, MOST_HOURS);
    if (least.isPresent() && most.isPresent() && least.get() > most.get()) {
      add(
          BefellDraft.MOST,
          "At least "
              + least.get()
              + " and at most "
              + most.get()
              + " hours cannot both be: write the smaller number first, or the same twice.");
    }
    boolean isWarm = draft.what().equals(BefellDraft.WARM);
    Optional<Place> place = named(Place.values(), draft.what());
    Optional<How> how = named(How.values(), draft.what());
    if (!isWarm && place.isEmpty() && how.isEmpty()) {
      add(BefellDraft.WHAT, "Choose what happened to the vial.");
    } else if (!isWarm && !(draft.celsius() + draft.least() + draft.most()).isBlank()) {
      add(
          BefellDraft.WHAT,
          "Degrees and hours are of a warm vial: choose that it was warm, or leave them empty.");
    }
    if (draft.reason().isBlank()) {
      add(CourseChanges.REASON, CourseChanges.REASON_MISSING);
    }
    CourseChanges.textFault(draft.reason(), CourseChanges.REASON).ifPresent(faults::add);
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    LocalDate since = day.orElseThrow();
    return Reading.of(
        place
            .<VialWord>map(where -> new Put(since, where))
            .or(() -> how.map(gone -> new Gone(since, gone)))
            .orElseGet(() -> new Warm(since, celsius, least, most)));
  }

  private void add(String field, String text) {
    faults.add(new Fault(field, text));
  }

  private Optional<LocalDate> day(String typed, LocalDate today) {
    Reading<LocalDate> day = ClinicTime.readDate(typed).at(BefellDraft.DAY);
    faults.addAll(day.placed());
    if (day.found().filter(one -> one.isAfter(today)).isPresent()) {
      add(
          BefellDraft.DAY,
          ClinicTime.words(day.orThrow())
              + " is still to come: write the first day on which it can have happened.");
    }
    return day.found();
  }

  private Optional<Integer> whole(String typed, String field, String what, int least, int most) {
    String text = typed.strip();
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<Integer> number =
        Optional.of(text)
            .filter(digits -> digits.matches("-?[0-9]{1,4}"))
            .map(Integer::valueOf)
            .filter(one -> one >= least && one <= most);
    if (number.isEmpty()) {
      add(
          field,
          what
              + ": \""
              + text
              + "\" is no whole number from "
              + least
              + " to "
              + most
              + ". Leave it empty if nobody knows.");
    }
    return number;
  }

  private static <E extends Enum<E>> Optional<E> named(E[] all, String name) {
    return Arrays.stream(all).filter(one -> one.name().equals(name)).findFirst();
  }
}
