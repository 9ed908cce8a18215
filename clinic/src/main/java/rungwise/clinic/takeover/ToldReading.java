package rungwise.clinic.takeover;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.OutsideText;
import rungwise.clinic.coded.ToldBy;
import rungwise.clinic.elsewhere.ElsewhereWord;
import rungwise.clinic.takeover.ToldDraft.End;
import rungwise.clinic.titration.DrawnMark;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Reads what he injects elsewhere, or gives everything that is wrong with it. */
final class ToldReading {

  private static final int LONGEST_NAME = 200;

  private final ToldDraft draft;
  private final List<Fault> faults = new ArrayList<>();

  private ToldReading(ToldDraft draft) {
    this.draft = draft;
  }

  /**
   * What is kept.
   *
   * @param isKnown whether the clinic has, or had, a preparation of an id
   */
  static Reading<ElsewhereWord> of(
      ToldDraft draft, Predicate<PreparationId> isKnown, LocalDate today) {
    return new ToldReading(draft).read(isKnown, today);
  }

  private Reading<ElsewhereWord> read(Predicate<PreparationId> isKnown, LocalDate today) {
    Optional<PreparationId> preparation =
        Optional.of(draft.preparation())
            .filter(id -> !id.isBlank())
            .map(PreparationId::new)
            .filter(isKnown);
    if (preparation.isEmpty()) {
      add(
          ToldDraft.PREPARATION,
          "Choose what he injects there by its composition. If it is not on the list, enter it as a"
              + " preparation of the clinic first.");
    }
    Optional<Barrel> barrel = barrel();
    Optional<Volume> drawn = drawn(barrel);
    Optional<String> from =
        take(
            OutsideText.line("Where he is treated", draft.from(), LONGEST_NAME).at(ToldDraft.FROM));
    Optional<LocalDate> lastDay = lastDay(today);
    Optional<Grade> grade = grade();
    Optional<SoftAfter> soft = soft();
    Optional<ToldBy> by = named(ToldBy.values(), draft.by());
    if (by.isEmpty()) {
      add(ToldDraft.BY, "Choose from what it is known. His own word is an answer.");
    }
    return faults.isEmpty()
        ? Reading.of(
            new ElsewhereWord.Told(
                preparation.orElseThrow(),
                drawn.orElseThrow(),
                barrel.map(Barrel::token),
                from.orElseThrow(),
                lastDay,
                grade.orElseThrow(),
                soft.orElseThrow(),
                by.orElseThrow()))
        : new Reading.Refused<>(faults);
  }

  private Optional<Barrel> barrel() {
    Optional<Barrel> barrel = Barrels.of(draft.syringe());
    if (barrel.isEmpty() && !draft.syringe().isBlank()) {
      add(ToldDraft.SYRINGE, "Choose the syringe from the list, or that the dose is told in mL.");
    }
    return barrel;
  }

  private Optional<Volume> drawn(Optional<Barrel> barrel) {
    Reading<Volume> read =
        barrel
            .map(one -> DrawnMark.read(draft.dose(), one))
            .orElseGet(() -> Volume.parseMillilitres(draft.dose()));
    Optional<Volume> drawn = take(read.at(ToldDraft.DOSE));
    if (drawn.filter(Volume.ZERO::equals).isPresent()) {
      add(ToldDraft.DOSE, "A dose of nothing was told: ask again how much he injects.");
    }
    return drawn;
  }

  private Optional<LocalDate> lastDay(LocalDate today) {
    if (draft.lastDay().isBlank()) {
      return Optional.empty();
    }
    Optional<LocalDate> day =
        take(ClinicTime.readDate(draft.lastDay().strip()).at(ToldDraft.LAST_DAY));
    if (day.filter(today::isBefore).isPresent()) {
      add(
          ToldDraft.LAST_DAY,
          ClinicTime.words(day.get()) + " is still to come: write the day of his last injection.");
    }
    return day;
  }

  private Optional<Grade> grade() {
    Optional<Grade> grade =
        Arrays.stream(Grade.values())
            .filter(one -> Integer.toString(one.number()).equals(draft.grade()))
            .findFirst();
    if (grade.isEmpty()) {
      add(ToldDraft.GRADE, "Choose how firm it is with this dose, as it was told.");
    }
    return grade;
  }

  private Optional<SoftAfter> soft() {
    Optional<End> end = named(End.values(), draft.end());
    if (end.isEmpty()) {
      add(ToldDraft.END, "Choose how long it lasts. Not known is an answer.");
      return Optional.empty();
    }
    if (end.get() == End.NOT_KNOWN) {
      if (!draft.minutes().isBlank()) {
        add(
            ToldDraft.MINUTES,
            "You chose \"" + End.NOT_KNOWN.words() + "\" and wrote minutes: choose one of both.");
      }
      return Optional.of(new SoftAfter.NotKnown());
    }
    Optional<TimeSpan> minutes = take(TimeSpan.parseMinutes(draft.minutes()).at(ToldDraft.MINUTES));
    return end.get() == End.EXACTLY
        ? minutes.map(SoftAfter.Exactly::new)
        : minutes.map(SoftAfter.AtLeast::new);
  }

  private static <E extends Enum<E>> Optional<E> named(E[] all, String name) {
    return Arrays.stream(all).filter(one -> one.name().equals(name)).findFirst();
  }

  private <T> Optional<T> take(Reading<T> read) {
    faults.addAll(read.placed());
    return read.found();
  }

  private void add(String field, String words) {
    faults.add(new Fault(field, words));
  }
}
