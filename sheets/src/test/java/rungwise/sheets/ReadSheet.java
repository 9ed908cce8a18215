package rungwise.sheets;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** A document as a library reads it back that did not make it alone. */
final class ReadSheet {

  private ReadSheet() {}

  /** All its letters, without any space. */
  static String letters(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return squeezed(new PDFTextStripper().getText(document));
    }
  }

  static String squeezed(String text) {
    return text.replaceAll("[\\s\u00a0]", "");
  }

  static int pages(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return document.getNumberOfPages();
    }
  }

  static DrawnShapes shapes(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return DrawnShapes.of(document.getPage(0));
    }
  }

  /** The height of each text in points, rounded to tenths. */
  static Set<Long> tenthsOfPoints(byte[] pdf) throws IOException {
    var sizes = new TreeSet<Long>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      new PDFTextStripper() {
        @Override
        protected void processTextPosition(TextPosition text) {
          sizes.add(Math.round(text.getFontSizeInPt() * 10.0));
        }
      }.getText(document);
    }
    return sizes;
  }

  /** The names of all fonts that are not inside the document. */
  static List<String> foreignFonts(byte[] pdf) throws IOException {
    var foreign = new ArrayList<String>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      new PDFTextStripper() {
        @Override
        protected void processTextPosition(TextPosition text) {
          if (!text.getFont().isEmbedded()) {
            foreign.add(text.getFont().getName());
          }
        }
      }.getText(document);
    }
    return foreign;
  }
}
