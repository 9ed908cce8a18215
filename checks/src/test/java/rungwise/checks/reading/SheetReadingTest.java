package rungwise.checks.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.handout.Keeping;
import rungwise.clinic.handout.SheetWorld;
import rungwise.clinic.handout.SheetWorld.Typed;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.clinic.words.PatientWord;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.DoseTextLint;
import rungwise.quantities.Volume;
import rungwise.sheets.PdfPress;
import rungwise.store.SqliteStore;

/**
 * Sheets as they are made, with real compositions and names, are read without effort and written
 * without what has been misread. Headings and parts of sentences are no sentences and are left out.
 */
final class SheetReadingTest {

  /** Barrio-Cantalejo 2008: from 65 on a Spanish text is fairly easy (from memory). */
  private static final double LEAST_INFLESZ = 65;

  /** So long a sentence is lost; a composition is as long as it is. */
  private static final int MOST_WORDS = 22;

  @TempDir Path folder;

  @Test
  void syllables_are_as_counted_by_hand() {
    assertCounted("counted-en", Syllables::english);
    assertCounted("counted-es", Syllables::spanish);
  }

  private static void assertCounted(String name, ToIntFunction<String> counted) {
    Map<String, Integer> byHand = Syllables.table(name);
    assertThat(byHand).hasSizeGreaterThan(30);
    assertThat(byHand)
        .allSatisfy(
            (word, count) -> assertThat(counted.applyAsInt(word)).as(word).isEqualTo(count));
  }

  private List<HomeSheet> sheets(Language language) {
    var sheets = new ArrayList<HomeSheet>();
    try (var store = SqliteStore.open(folder)) {
      var world =
          new SheetWorld(
              new CoursePorts(
                  store.courses(),
                  store.protocolShelf(),
                  store.populationShelf(),
                  store.audit(),
                  store.roomDays(),
                  store.clinicVials(),
                  store.signedWords(),
                  store.pastHistories(),
                  store.transactions()),
              new PdfPress());
      for (Preparation preparation :
          List.of(
              SamplePreparations.ALPROSTADIL_20,
              SamplePreparations.of("three-drug-30-1-10").orElseThrow())) {
        var course = world.course(preparation, "u100-0.5");
        for (Keeping keeping : Keeping.values()) {
          sheets.add(
              world
                  .sign(
                      course,
                      Volume.ofMicrolitres(120),
                      Optional.of(Volume.ofMicrolitres(200)),
                      language,
                      Paper.A4,
                      keeping,
                      Typed.PLAIN)
                  .sheet());
        }
      }
    }
    return sheets;
  }

  private static Stream<PatientWord> sentences(HomeSheet sheet) {
    return sheet.words().stream().filter(word -> !word.isHeading() && !word.isPart());
  }

  private static List<String> lines(HomeSheet sheet) {
    return sentences(sheet).map(sheet::text).toList();
  }

  private static String told(Language language, Tally raw, Tally after) {
    return ("%s: raw %s, FK %.2f, SMOG %.2f, INFLESZ %.1f;"
            + " after the list FK %.2f, SMOG %.2f, INFLESZ %.1f")
        .formatted(
            language.tag(),
            raw,
            raw.fleschKincaidGrade(),
            raw.smog(),
            raw.inflesz(),
            after.fleschKincaidGrade(),
            after.smog(),
            after.inflesz());
  }

  @Test
  void an_english_sheet_asks_no_more_than_six_years_of_school() {
    for (HomeSheet sheet : sheets(Language.ENGLISH)) {
      Tally after = Prose.ENGLISH.count(lines(sheet), /* isAfterList= */ true);
      System.out.println(
          told(
              Language.ENGLISH,
              Prose.ENGLISH.count(lines(sheet), /* isAfterList= */ false),
              after));
      assertThat(after.sentences()).isGreaterThan(30);
      assertThat(after.fleschKincaidGrade()).isLessThanOrEqualTo(Tally.MOST_GRADE);
      assertThat(after.smog()).isLessThanOrEqualTo(Tally.MOST_GRADE);
      assertPlain(sheet, Prose.ENGLISH);
    }
  }

  @Test
  void a_spanish_sheet_is_fairly_easy() {
    for (HomeSheet sheet : sheets(Language.SPANISH)) {
      Tally after = Prose.SPANISH.count(lines(sheet), /* isAfterList= */ true);
      System.out.println(
          told(
              Language.SPANISH,
              Prose.SPANISH.count(lines(sheet), /* isAfterList= */ false),
              after));
      assertThat(after.inflesz()).isGreaterThanOrEqualTo(LEAST_INFLESZ);
      assertPlain(sheet, Prose.SPANISH);
    }
  }

  /** The rows of reference on what is misread, asked of every line that is printed. */
  private static void assertPlain(HomeSheet sheet, Prose prose) {
    assertThat(sheet.words())
        .allSatisfy(
            word ->
                assertThat(DoseTextLint.faultsInProse(sheet.text(word)))
                    .as(sheet.text(word))
                    .isEmpty());
    assertThat(sentences(sheet).filter(word -> !isComposition(word)))
        .allSatisfy(
            word -> {
              Tally tally = prose.count(List.of(sheet.text(word)), /* isAfterList= */ true);
              assertThat(tally.words())
                  .as(sheet.text(word))
                  .isLessThanOrEqualTo(MOST_WORDS * tally.sentences());
            });
  }

  private static boolean isComposition(PatientWord word) {
    return switch (word) {
      case SHEET_DOSE_CONTENT, SHEET_DOSE_COMPOSITION, SHEET_NUMBER, SHEET_CURRENT, SHEET_WHO ->
          true;
      default -> false;
    };
  }
}
