package rungwise.files;

import java.util.EnumMap;
import java.util.Optional;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.Composition;
import rungwise.quantities.Concentration;
import rungwise.quantities.Reading;

/** The composition of a protocol: a list of strengths such as "30 mg/mL of papaverine". */
final class CompositionPart {

  private record Strength(Component component, Concentration per) {}

  private CompositionPart() {}

  static Optional<Composition> read(Node list) {
    var strengths = new EnumMap<Component, Concentration>(Component.class);
    for (Node item : list.items()) {
      item.read(CompositionPart::strength)
          .filter(one -> strengths.put(one.component(), one.per()) != null)
          .ifPresent(one -> item.fault(one.component().token() + " is named twice: name it once"));
    }
    return strengths.isEmpty() ? Optional.empty() : Optional.of(new Composition(strengths));
  }

  private static Reading<Strength> strength(String text) {
    int of = text.indexOf(ProtocolFile.OF);
    if (of < 0) {
      return Reading.refused(
          "\"" + text + "\" names no component: write such as 30 mg/mL of papaverine");
    }
    return switch (ProtocolFile.component(text.substring(of + ProtocolFile.OF.length()))) {
      case Reading.Refused<Component> refused -> new Reading.Refused<>(refused.faults());
      case Reading.Read<Component> component ->
          Concentration.parse(text.substring(0, of))
              .map(per -> new Strength(component.value(), per));
    };
  }
}
