package rungwise.web.page;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Ties a control to its hint and its fault. */
final class Describing {

  private Describing() {}

  static String ids(String name, String hint, String fault) {
    return Stream.of(hint.isEmpty() ? "" : name + "-hint", fault.isEmpty() ? "" : name + "-fault")
        .filter(id -> !id.isEmpty())
        .collect(Collectors.joining(" "));
  }
}
