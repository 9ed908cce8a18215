package rungwise.web.dose;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.dose.DoseReply;
import rungwise.clinic.dose.Wanted;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Fault;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;
import rungwise.web.page.Faults;

/** The question as it stands in the address: fields by name, an absent one is empty. */
record DoseForm(Map<String, String> typed) {

  static final String PREPARATION = "preparation";
  static final String BARREL = "barrel";

  /** What the number is: one of the following, or the token of a component. */
  static final String BY = "by";

  static final String BY_VOLUME = "volume";
  static final String BY_MARK = "mark";
  static final String AMOUNT = "amount";

  DoseForm {
    typed = Map.copyOf(typed);
  }

  /** What came of the question: what is wrong with it, or what there is to say. */
  record Outcome(Faults faults, Optional<DoseReply> reply) {}

  String said(String field) {
    return typed.getOrDefault(field, "").strip();
  }

  /** Whether there is a question: a preparation alone may be chosen by a link. */
  boolean isAsked() {
    return Stream.of(BARREL, BY, AMOUNT).anyMatch(typed::containsKey);
  }

  Outcome answer(List<Preparation> offered) {
    if (!isAsked()) {
      return new Outcome(Faults.NONE, Optional.empty());
    }
    var faults = new ArrayList<Fault>();
    Optional<Preparation> preparation =
        offered.stream().filter(one -> one.id().value().equals(said(PREPARATION))).findFirst();
    if (preparation.isEmpty()) {
      faults.add(new Fault(PREPARATION, noPreparation()));
    }
    Optional<Barrel> barrel = barrels().stream().filter(this::isChosen).findFirst();
    if (barrel.isEmpty()) {
      faults.add(new Fault(BARREL, noBarrel()));
    }
    Reading<Wanted> wanted = wanted(faults);
    if (!faults.isEmpty()) {
      return new Outcome(new Faults(faults), Optional.empty());
    }
    DoseReply reply =
        wanted.orThrow().of(preparation.orElseThrow(), barrel.orElseThrow(), wanted.notices());
    return new Outcome(Faults.NONE, Optional.of(reply));
  }

  /** The syringes on which a line can be asked for. */
  static List<Barrel> barrels() {
    return Barrels.all().stream()
        .filter(one -> one.marking().graduationVolume().isPresent())
        .toList();
  }

  private boolean isChosen(Barrel barrel) {
    return barrel.token().equals(said(BARREL));
  }

  private String noPreparation() {
    return said(PREPARATION).isEmpty()
        ? "The preparation was not chosen: choose what the vial in your hand holds."
        : "This preparation is not on the list any more: choose another.";
  }

  private String noBarrel() {
    return Barrels.of(said(BARREL))
        .map(device -> "No line of a " + device + " is known here: choose another.")
        .orElse("The syringe was not chosen: choose the one in your hand.");
  }

  private Reading<Wanted> wanted(List<Fault> faults) {
    String by = said(BY);
    Optional<Component> component =
        Arrays.stream(Component.values()).filter(one -> one.token().equals(by)).findFirst();
    if (component.isEmpty() && !by.equals(BY_VOLUME) && !by.equals(BY_MARK)) {
      String fault = "It was not chosen what the number is: choose one.";
      faults.add(new Fault(BY, fault));
      return Reading.refused(fault);
    }
    Reading<Wanted> reading = component.map(this::content).orElseGet(this::volumeOrMark);
    reading.faults().forEach(fault -> faults.add(new Fault(AMOUNT, fault)));
    return reading;
  }

  private Reading<Wanted> volumeOrMark() {
    return said(BY).equals(BY_MARK)
        ? MarkNumber.parse(said(AMOUNT)).map(Wanted.ByMark::new)
        : Volume.parseMillilitres(said(AMOUNT)).map(Wanted.ByVolume::new);
  }

  private Reading<Wanted> content(Component component) {
    Reading<Mass> mass =
        switch (component.unit()) {
          case MICROGRAM -> Mass.parseMicrograms(said(AMOUNT));
          case MILLIGRAM -> Mass.parseMilligrams(said(AMOUNT));
        };
    return mass.map(found -> new Wanted.ByContent(component, found));
  }
}
