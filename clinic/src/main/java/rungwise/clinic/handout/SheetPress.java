package rungwise.clinic.handout;

import java.util.Optional;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.dosing.known.Dose;

/** Port: what a sheet needs of drawings and fonts, and the document itself. */
public interface SheetPress {

  /**
   * How he finds the line of a dose: "two small lines past the 10"; empty for a device without
   * lines.
   */
  Optional<String> lineWords(Dose dose, Language language);

  /** The characters of a text that cannot be printed, each once; empty if all can. */
  String notPrintable(String text);

  /** The document of a sheet; the same sheet and dose give the same bytes. */
  byte[] pdf(HomeSheet sheet, Dose dose);
}
