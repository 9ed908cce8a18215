package rungwise.checks.rows;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;
import rungwise.dosing.source.Citation;
import rungwise.files.SampleProtocols;

/** No number says that its text was read where the reference rows saw less than the text. */
final class ProvenanceTest {

  /** How the reference rows name each text. */
  private static final Map<Citation, String> IN_ROWS = new EnumMap<>(Citation.class);

  static {
    IN_ROWS.put(
        Citation.US_SYRINGE_LABEL,
        "dual-chamber syringe|US prescribing information, (patient counselling|s5)");
    IN_ROWS.put(Citation.US_VIAL_LABEL, "alprostadil vial volume table|vial s2.1");
    IN_ROWS.put(Citation.US_VIAL_LABEL_OLDER, "vial PI, older revision");
    IN_ROWS.put(Citation.US_CARTRIDGE_LABEL, "alfadex cartridge");
    IN_ROWS.put(Citation.UK_ALFADEX_SMPC, "UK SmPC");
    IN_ROWS.put(Citation.UK_MONOGRAPH_2023, "alprostadil injection monograph");
    IN_ROWS.put(Citation.EU_CORE_SAFETY_2012, "EU core safety profile");
    IN_ROWS.put(Citation.EAU_SEXUAL_HEALTH, "EAU Sexual and Reproductive Health");
    IN_ROWS.put(Citation.EAU_PRIAPISM_2015, "EAU pocket guideline on priapism");
    IN_ROWS.put(Citation.EMEDICINE_PRIAPISM, "115710");
    IN_ROWS.put(Citation.CARDIAC_RISK_2016, "Nat Rev Dis Primers");
    IN_ROWS.put(Citation.RHODEN_2002, "Rhoden 2002");
    IN_ROWS.put(Citation.ALBAUGH_2006, "Albaugh 2006$");
    IN_ROWS.put(Citation.MULHALL_2007, "PMID 17888069");
    IN_ROWS.put(Citation.ISO_8537_2007, "ISO 8537:2007 via");
    IN_ROWS.put(Citation.ISO_7886_1, "ISO 7886-1");
    IN_ROWS.put(Citation.CASELLA_1993, "Casella 1993");
    IN_ROWS.put(Citation.LTEIF_1999, "Lteif");
    IN_ROWS.put(Citation.USP_797, "(?<!USP 28 )<797>");
    IN_ROWS.put(Citation.USP_797_OLDER, "USP 28 <797>");
    IN_ROWS.put(Citation.USP_1151, "USP 29 <1151>");
    IN_ROWS.put(Citation.USP_ALPROSTADIL, "USP monograph Alprostadil Injection");
    IN_ROWS.put(Citation.STABILITY_2003, "Korean J Androl 2003");
    IN_ROWS.put(Citation.YOUNGER_1986, "Younger & Szabo 1986");
    IN_ROWS.put(Citation.DEAD_SPACE_STUDY, "dead-space study vs ISO 7886-1");
    IN_ROWS.put(Citation.DEAD_SPACE_1986, "Diabetes Care 1986 9\\(1\\)");
    IN_ROWS.put(Citation.BECHARA_1997, "Bechara 1997");
    IN_ROWS.put(Citation.PAPAVERINE_DRUG_RECORD, "papaverine HCl MW");
  }

  /** What makes less of a text that was read. */
  private static final Pattern LESS = Pattern.compile("secondary|memory|machine|damaged");

  private static final Pattern READ_IN_CODE =
      Pattern.compile("Source\\.read\\(\\s*Citation\\.(\\w+)|Citation\\.(\\w+),\\s*Seen\\.READ\\b");

  private static final Pattern READ_IN_SAMPLE =
      Pattern.compile("published: ([a-z0-9-]+), place: \"[^\"]*\", seen: read");

  private static Set<Citation> markedRead() {
    var marked = EnumSet.noneOf(Citation.class);
    for (String text : code()) {
      READ_IN_CODE
          .matcher(text)
          .results()
          .map(found -> found.group(1) == null ? found.group(2) : found.group(1))
          .map(Citation::valueOf)
          .forEach(marked::add);
    }
    for (String sample : SampleProtocols.documents()) {
      READ_IN_SAMPLE
          .matcher(sample)
          .results()
          .map(found -> Citation.of(found.group(1)).orElseThrow())
          .forEach(marked::add);
    }
    return marked;
  }

  private static List<String> code() {
    return Repository.textFilesBelow("dosing/src/main/java").stream().map(TextFile::text).toList();
  }

  private static List<Row> rowsOf(Citation citation) {
    Pattern named = Pattern.compile(IN_ROWS.getOrDefault(citation, "no row names this text"));
    return ReferenceFiles.all().stream()
        .flatMap(file -> file.rows().stream())
        .filter(row -> named.matcher(row.source()).find())
        .toList();
  }

  @Test
  void a_text_that_is_marked_as_read_was_read_in_every_row_of_it() {
    assertThat(markedRead())
        .isNotEmpty()
        .allSatisfy(
            citation ->
                assertThat(rowsOf(citation))
                    .as(citation.id())
                    .isNotEmpty()
                    .allMatch(row -> row.provenance().contains("read"))
                    .noneMatch(row -> LESS.matcher(row.provenance()).find()));
  }

  @Test
  void each_name_in_the_table_finds_rows() {
    assertThat(IN_ROWS.keySet())
        .allSatisfy(citation -> assertThat(rowsOf(citation)).as(citation.id()).isNotEmpty());
  }
}
