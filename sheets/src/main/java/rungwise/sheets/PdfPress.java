package rungwise.sheets;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import rungwise.clinic.handout.SheetPress;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.dosing.known.Dose;
import rungwise.drawing.MarkWords;

/**
 * Sheets as tagged PDF (ISO 14289-1). A document holds no time and no chance: the same sheet gives
 * the same bytes.
 */
public final class PdfPress implements SheetPress {

  private static final float PDF_VERSION = 1.7f;
  private static final int RADIX = 36;

  @Override
  public Optional<String> lineWords(Dose dose, Language language) {
    return BarrelScales.of(dose.barrel())
        .map(scale -> MarkWords.of(scale, dose.volume(), PatientLines.in(language)));
  }

  @Override
  public String notPrintable(String text) {
    return SheetFont.missing(text);
  }

  @Override
  public byte[] pdf(HomeSheet sheet, Dose dose) {
    var page = new SheetPage(sheet, dose);
    try (BatikSVGDrawer drawer = new BatikSVGDrawer()) {
      var builder = new PdfRendererBuilder();
      builder.usePdfUaAccessibility(true);
      builder.usePdfVersion(PDF_VERSION);
      builder.useSVGDrawer(drawer);
      builder.withHtmlContent(page.markup(), null);
      var out = new ByteArrayOutputStream();
      builder.toStream(out);
      try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
        renderer.createPDFWithoutClosing();
        PDDocument document = renderer.getPdfDocument();
        withoutTime(document, sheet, page.title());
        document.save(out);
      }
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException("bug: a sheet cannot be made", e);
    }
  }

  private static void withoutTime(PDDocument document, HomeSheet sheet, String title)
      throws IOException {
    var information = new PDDocumentInformation();
    information.setTitle(title);
    document.setDocumentInformation(information);
    document.setDocumentId(Long.parseUnsignedLong(sheet.code().text(), RADIX));
    var metadata = new PDMetadata(document);
    metadata.importXMPMetadata(metadata(sheet, title));
    document.getDocumentCatalog().setMetadata(metadata);
  }

  private static byte[] metadata(HomeSheet sheet, String title) {
    return """
        <?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
        <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
        <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
         xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
        <pdfuaid:part>1</pdfuaid:part>
        <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
        <dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>
        </rdf:Description>
        </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="w"?>"""
        .formatted(title, sheet.language().tag())
        .getBytes(StandardCharsets.UTF_8);
  }
}
