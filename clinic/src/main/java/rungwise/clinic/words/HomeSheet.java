package rungwise.clinic.words;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that a sheet for home says, as it was made: a document of it is made of this and the drawn
 * dose alone, so the same record gives the same bytes.
 *
 * @param id that nobody else has
 * @param wordsVersion of which version the texts are
 * @param address where it is told whether the sheet is current, without the code; may be empty
 * @param words the texts in their order
 * @param filling what fills their gaps
 */
public record HomeSheet(
    String id,
    Language language,
    Paper paper,
    int wordsVersion,
    String address,
    List<PatientWord> words,
    Map<Slot, String> filling) {

  private static final String BETWEEN = "=";

  public HomeSheet {
    words = List.copyOf(words);
    var ordered = new EnumMap<Slot, String>(Slot.class);
    ordered.putAll(filling);
    filling = Collections.unmodifiableMap(ordered);
    if (filling.values().stream().anyMatch(text -> text.lines().count() > 1)) {
      throw new IllegalArgumentException("bug: a gap of a sheet is filled with several lines");
    }
  }

  /** Its short hash. */
  public SheetCode code() {
    return SheetCode.of(
        String.join(
            "\n",
            id,
            language.tag(),
            paper.token(),
            Integer.toString(wordsVersion),
            address,
            said()));
  }

  /** The text of a word that it says; the code is no part of what the code is made of. */
  public String text(PatientWord word) {
    var all = new EnumMap<Slot, String>(Slot.class);
    all.putAll(filling);
    all.put(Slot.SHEET_CODE, code().words());
    return PatientWords.in(language).text(word, all);
  }

  public boolean says(PatientWord word) {
    return words.contains(word);
  }

  /** What fills a gap; empty if nothing does. */
  public Optional<String> filled(Slot slot) {
    return Optional.ofNullable(filling.get(slot));
  }

  /** The address with the code, as it stands in the square. */
  public String square() {
    return address.isEmpty() ? code().words() : address + "?code=" + code().text();
  }

  /** Words and filling, one a line and always in the same order, for the record. */
  public String said() {
    var lines = new ArrayList<String>();
    words.forEach(word -> lines.add(word.token()));
    filling.entrySet().stream()
        .map(one -> one.getKey().name() + BETWEEN + one.getValue())
        .sorted()
        .forEach(lines::add);
    return String.join("\n", lines);
  }

  /**
   * A sheet of what the record says.
   *
   * @throws IllegalArgumentException if it names a word or a gap that there never was
   */
  public static HomeSheet read(
      String id, Language language, Paper paper, int wordsVersion, String address, String said) {
    var words = new ArrayList<PatientWord>();
    var filling = new EnumMap<Slot, String>(Slot.class);
    for (String line : said.lines().toList()) {
      int between = line.indexOf(BETWEEN);
      if (between < 0) {
        words.add(
            PatientWord.of(line)
                .orElseThrow(() -> new IllegalArgumentException("bug: no word " + line)));
      } else {
        filling.put(Slot.valueOf(line.substring(0, between)), line.substring(between + 1));
      }
    }
    return new HomeSheet(id, language, paper, wordsVersion, address, words, filling);
  }
}
