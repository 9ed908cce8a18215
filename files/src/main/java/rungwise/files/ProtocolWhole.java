package rungwise.files;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.Composition;
import rungwise.dosing.protocol.Floor;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.source.Sourced;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Volume;

/** What no single place of a protocol's document can tell: that it contradicts itself. */
final class ProtocolWhole {

  private ProtocolWhole() {}

  /** Notes every contradiction between the parts. */
  static void check(Node root, ProtocolParts parts) {
    ProtocolAmount most = parts.ceiling().value();
    checkDoses(root, parts.starts(), parts.steps(), most);
    checkLikeCeiling(root, parts.more().careAbove(), parts.more().sameVisit(), most);
    checkComponents(root, parts.components(), parts.starts(), most, parts.more().componentLimits());
    parts.more().composition().ifPresent(said -> checkComposition(root, parts, said));
  }

  /**
   * Notes what a document that was signed earlier may still say, and none may that is signed now.
   */
  static void checkForSigning(Node root, ProtocolParts parts) {
    for (Floor floor : parts.rules().passed()) {
      root.at(floor.part())
          .fault(floor.words() + ", whoever signs otherwise (" + floor.source().words() + ")");
    }
    if (parts.lacksComposition()) {
      root.at("composition")
          .fault(
              "a protocol in volumes names what one mL holds: write such as 30 mg/mL of papaverine"
                  + " for each component");
    }
  }

  private static void checkComposition(Node root, ProtocolParts parts, Composition said) {
    Node place = root.at("composition");
    if (!(parts.ceiling().value() instanceof ProtocolAmount.OfVolume)) {
      place.fault("the doses are masses, whatever one mL holds: leave it out");
    }
    if (!said.strengths().keySet().equals(parts.components())) {
      place.fault("\"" + said + "\" does not name exactly the components under for");
    }
    for (Protocol.ComponentLimit limit : parts.more().componentLimits()) {
      for (Protocol.Start start : parts.starts()) {
        if (start.amount() instanceof ProtocolAmount.OfVolume(Volume volume)
            && said.in(limit.component(), volume).filter(limit::isLessThan).isPresent()) {
          root.at("component_limits")
              .fault(limit + " is passed by the first dose of " + start.amount());
        }
      }
    }
  }

  private static void checkDoses(
      Node root, List<Protocol.Start> starts, List<Protocol.Step> steps, ProtocolAmount most) {
    for (AetiologyGroup group : AetiologyGroup.values()) {
      long count = starts.stream().filter(start -> start.groups().contains(group)).count();
      if (count != 1) {
        root.at("start")
            .fault("the group " + group.token() + " is named " + count + " times, not once");
      }
    }
    for (Protocol.Start start : starts) {
      if (!start.amount().isLike(most)) {
        root.at("start").fault(start.amount() + " is not counted as the ceiling is");
      } else if (start.amount().isMoreThan(most)) {
        root.at("start").fault(start.amount() + " is above the ceiling of " + most);
      } else if (start.amount().isNothing()) {
        root.at("start").fault("a first dose of nothing");
      }
      requireLine(root.at("start"), start.amount());
    }
    for (Protocol.Step step : steps) {
      if (!step.smallest().isLike(most)
          || !step.largest().isLike(most)
          || !step.upTo().isLike(most)) {
        root.at("steps").fault(step.smallest() + " is not counted as the ceiling is");
      } else if (step.smallest().isMoreThan(step.largest())) {
        root.at("steps").fault("add " + step.smallest() + " is more than add_at_most");
      } else if (step.smallest().isNothing()) {
        root.at("steps").fault("add " + step.smallest() + " never gets anywhere");
      }
      requireLine(root.at("steps"), step.smallest());
    }
    requireOrder(root, steps, most);
  }

  /** A volume that no syringe has a line for would be rounded down each time. */
  private static void requireLine(Node node, ProtocolAmount amount) {
    if (amount instanceof ProtocolAmount.OfVolume(Volume volume)
        && Barrels.all().stream().noneMatch(barrel -> barrel.hasMarkAt(volume))) {
      node.fault(volume + " lies on no printed line of any syringe that is known here");
    }
  }

  private static void requireOrder(Node root, List<Protocol.Step> steps, ProtocolAmount most) {
    for (int at = 1; at < steps.size(); at++) {
      ProtocolAmount before = steps.get(at - 1).upTo();
      ProtocolAmount next = steps.get(at).upTo();
      if (next.isLike(before) && !next.isMoreThan(before)) {
        root.at("steps").fault("up_to " + next + " does not come after " + before);
      }
    }
    steps.stream()
        .map(Protocol.Step::upTo)
        .filter(last -> last.isLike(most) && last.isMoreThan(most))
        .findFirst()
        .ifPresent(
            last -> root.at("steps").fault("up_to " + last + " is above the ceiling of " + most));
  }

  private static void checkLikeCeiling(
      Node root,
      Optional<Sourced<ProtocolAmount>> careAbove,
      Optional<Protocol.SameVisit> sameVisit,
      ProtocolAmount ceiling) {
    careAbove
        .filter(care -> !care.value().isLike(ceiling))
        .ifPresent(
            care ->
                root.at("care_above").fault(care.value() + " is not counted as the ceiling is"));
    sameVisit
        .flatMap(Protocol.SameVisit::afterPartialUpTo)
        .filter(most -> !most.isLike(ceiling))
        .ifPresent(most -> root.at("same_visit").fault(most + " is not counted as the ceiling is"));
  }

  private static void checkComponents(
      Node root,
      Set<Component> components,
      List<Protocol.Start> starts,
      ProtocolAmount ceiling,
      List<Protocol.ComponentLimit> limits) {
    Node place = root.at("component_limits");
    var seen = EnumSet.noneOf(Component.class);
    for (Protocol.ComponentLimit limit : limits) {
      Component component = limit.component();
      if (!components.contains(component)) {
        place.fault(limit + ": the protocol is not written for it");
      }
      if (!seen.add(component)) {
        place.fault(limit + ": this component has a limit already");
      }
      var most = new ProtocolAmount.Content(component, limit.most());
      if (ceiling.isLike(most) && ceiling.isMoreThan(most)) {
        place.fault(limit + " is passed by the ceiling of " + ceiling);
      }
      for (Protocol.Start start : starts) {
        if (start.amount().isLike(most) && start.amount().isMoreThan(most)) {
          place.fault(limit + " is passed by the first dose of " + start.amount());
        }
      }
    }
  }
}
