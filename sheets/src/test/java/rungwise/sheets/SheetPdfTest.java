package rungwise.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import rungwise.clinic.handout.Keeping;
import rungwise.clinic.handout.SheetWorld;
import rungwise.clinic.handout.SheetWorld.Made;
import rungwise.clinic.handout.SheetWorld.Typed;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.clinic.words.PatientWord;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Volume;

/** What a sheet is as a document, whatever it says. */
final class SheetPdfTest {

  private static final int DOTS_PER_INCH = 150;
  private static final long TWELVE_POINTS = 120;

  private static final PdfPress PRESS = new PdfPress();

  @TempDir private static Path folder;
  private static OpenSheetStore store;
  private static SheetWorld world;

  @BeforeAll
  static void open() {
    VeraGreenfieldFoundryProvider.initialise();
    store = new OpenSheetStore(folder);
    world = new SheetWorld(store.ports(), PRESS);
  }

  @AfterAll
  static void close() {
    store.close();
  }

  private static Made made(Language language, Paper paper, Typed typed) {
    var course = world.course(SamplePreparations.ALPROSTADIL_20, "u100-0.5");
    return world.sign(
        course,
        Volume.ofMicrolitres(120),
        Optional.of(Volume.ofMicrolitres(250)),
        language,
        paper,
        Keeping.FREEZER,
        typed);
  }

  private static byte[] pdf(Made made) {
    return PRESS.pdf(made.sheet(), made.dose());
  }

  /** ISO 14289-1, by the validator that its authors' industry body maintains. */
  @ParameterizedTest
  @CsvSource({"ENGLISH, A4", "ENGLISH, LETTER", "SPANISH, A4", "SPANISH, LETTER"})
  void a_reading_machine_can_read_it_and_it_fits_on_three_pages(Language language, Paper paper)
      throws Exception {
    byte[] pdf = pdf(made(language, paper, Typed.PLAIN));

    try (var parser =
            Foundries.defaultInstance()
                .createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
        var validator =
            Foundries.defaultInstance()
                .createValidator(PDFAFlavour.PDFUA_1, /* logSuccess= */ false)) {
      var result = validator.validate(parser);
      assertThat(result.getTestAssertions()).isEmpty();
      assertThat(result.isCompliant()).isTrue();
    }
    assertThat(ReadSheet.pages(pdf)).isLessThanOrEqualTo(3);
    assertThat(ReadSheet.foreignFonts(pdf)).isEmpty();
    assertThat(ReadSheet.tenthsOfPoints(pdf))
        .allSatisfy(size -> assertThat(size).isGreaterThanOrEqualTo(TWELVE_POINTS));
  }

  @ParameterizedTest
  @CsvSource({"ENGLISH, A4", "SPANISH, LETTER"})
  void the_same_sheet_gives_the_same_bytes(Language language, Paper paper) {
    Made made = made(language, paper, Typed.PLAIN);

    assertThat(pdf(made)).isEqualTo(pdf(made));
    assertThat(new PdfPress().pdf(made.sheet(), made.dose())).isEqualTo(pdf(made));
  }

  /** A camera sees dots: the page is drawn as such before the square is read. */
  @Test
  void a_camera_reads_from_the_square_where_it_is_told_whether_the_sheet_is_current()
      throws Exception {
    Made made = made(Language.ENGLISH, Paper.A4, Typed.PLAIN);

    assertThat(read(pdf(made)))
        .isEqualTo("https://clinic.example/sheet?code=" + made.sheet().code().text());
  }

  private static String read(byte[] pdf) throws Exception {
    BufferedImage page = picture(pdf);
    int[] dots = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
    var source = new RGBLuminanceSource(page.getWidth(), page.getHeight(), dots);
    return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source))).getText();
  }

  private static BufferedImage picture(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFRenderer(document).renderImageWithDPI(0, DOTS_PER_INCH, ImageType.GRAY);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script> & <b>\"St. 'Anna'\"</b>",
        "]]> --> <!DOCTYPE x> %s {hospital} $1 \\u0041 &#x41;",
        "<img src='file:///etc/passwd'/>",
        "Zażółć gęślą jaźń, Østerbro, Đakovo, São José"
      })
  void whatever_was_typed_is_printed_as_text(String typed) throws IOException {
    assertThat(PRESS.notPrintable(typed)).isEmpty();
    Made made = made(Language.SPANISH, Paper.A4, new Typed(typed, typed));

    assertThat(ReadSheet.letters(pdf(made)))
        .contains(ReadSheet.squeezed(made.sheet().text(PatientWord.SHEET_LONG_FOUR)))
        .contains(ReadSheet.squeezed(typed));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\u05d1\u05d9\u05ea",
        "\u0645\u0633\u062a\u0634\u0641\u0649",
        "\ud83d\ude91 North",
        "\u5317\u533b\u9662",
        "\u202eNorth"
      })
  void what_the_letters_do_not_have_is_named(String typed) {
    assertThat(PRESS.notPrintable(typed)).isNotBlank();
  }

  /** As long a word as a form lets through: it goes on in the next line and off no page. */
  @Test
  void a_text_as_long_as_it_may_be_is_printed_whole() throws IOException {
    String longest = "M".repeat(120);
    Made made = made(Language.ENGLISH, Paper.LETTER, new Typed(longest, longest));

    assertThat(ReadSheet.letters(pdf(made))).contains(longest);
  }
}
