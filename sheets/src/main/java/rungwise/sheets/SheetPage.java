package rungwise.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.PatientWord;
import rungwise.dosing.known.Dose;
import rungwise.drawing.SvgElement;

/**
 * A sheet as a page in a markup that can be printed. Every text stands in the order of the sheet,
 * in 12 points or more: what does not fit goes on another page.
 */
record SheetPage(HomeSheet sheet, Dose dose) {

  private static final String STYLE =
      """
      @page { size: {paper}; margin: 12mm 14mm 15mm 14mm;
        @bottom-left { content: "{code}"; font-family: Sheet; font-size: 12pt; }
        @bottom-right { content: counter(page) " / " counter(pages);
          font-family: Sheet; font-size: 12pt; } }
      body { font-family: Sheet; font-size: 12pt; line-height: 1.22; color: #000; margin: 0; }
      h1 { font-size: 22pt; line-height: 1.1; margin: 0 0 1.5mm 0; }
      h2 { font-size: 14.5pt; line-height: 1.15; margin: 2.6mm 0 0.8mm 0; padding-top: 1mm;
        border-top: 0.5mm solid #000; page-break-after: avoid; }
      p { margin: 0 0 0.8mm 0; }
      p.strip { border: 0.9mm solid #000; padding: 1.6mm 2.6mm; margin: 1.6mm 0; font-size: 14pt;
        font-weight: bold; line-height: 1.2; }
      p.dose { font-size: 19pt; font-weight: bold; line-height: 1.2; margin: 1mm 0 2mm 0; }
      p.draft { border: 0.4mm dashed #000; padding: 1mm 2mm; margin: 1.5mm 0; }
      p.strong { font-weight: bold; }
      div.write { display: inline-block; width: 58mm; margin: 1mm 0 0 0; }
      div.line { width: 52mm; height: 8mm; border-bottom: 0.4mm solid #000; }
      ol { margin: 0; padding: 0 0 0 8mm; }
      li { margin: 0 0 0.8mm 0; page-break-inside: avoid; }
      div.part { page-break-inside: avoid; }
      div.picture { margin: 1mm 0; }
      div.size { display: inline-block; margin: 1mm 8mm 0 0; }
      div.square { float: right; margin: 0 0 1mm 4mm; }
      p.strip { clear: both; }
      p.below { page-break-before: avoid; }
      """;

  /** What stands before a drawing of the syringe. */
  private static final PatientWord BEFORE_PICTURE = PatientWord.SHEET_DOSE_VOLUME;

  String markup() {
    SvgElement head =
        SvgElement.of("head")
            .holding(
                List.of(
                    SvgElement.of("title").saying(title()),
                    SvgElement.of("meta")
                        .with("name", "subject")
                        .with("content", text(PatientWord.SHEET_WHO)),
                    new SvgElement("style", List.of(), style())));
    return SvgElement.of("html")
        .with("lang", sheet.language().tag())
        .with("xmlns", "http://www.w3.org/1999/xhtml")
        .holding(List.of(head, SvgElement.of("body").holding(parts())))
        .toString();
  }

  String title() {
    return text(PatientWord.SHEET_HEAD_MAIN);
  }

  private String style() {
    return SheetFont.rules()
        + STYLE.replace("{paper}", sheet.paper().size()).replace("{code}", sheet.code().words());
  }

  private String text(PatientWord word) {
    return SheetFont.composed(Unbroken.text(sheet, word));
  }

  /** The texts in parts, each from one heading to the next. */
  private List<SvgElement> parts() {
    var parts = new ArrayList<SvgElement>();
    List<PatientWord> words = sheet.words();
    int from = 0;
    for (int at = 1; at <= words.size(); at++) {
      if (at == words.size() || words.get(at).isHeading()) {
        parts.add(part(words.subList(from, at)));
        from = at;
      }
    }
    return parts;
  }

  private SvgElement part(List<PatientWord> words) {
    String looks =
        switch (words.getFirst()) {
          case SHEET_HEAD_MAIN, SHEET_HEAD_DOSE, SHEET_HEAD_STEPS, SHEET_HEAD_KEEP -> "long";
          default -> "part";
        };
    var inner = new ArrayList<SvgElement>();
    var steps = new ArrayList<SvgElement>();
    for (PatientWord word : words) {
      if (isStep(word)) {
        steps.add(SvgElement.of("li").saying(text(word)));
      } else {
        flush(steps, inner);
        inner.addAll(elements(word));
      }
    }
    flush(steps, inner);
    return SvgElement.of("div").with("class", looks).holding(inner);
  }

  private static void flush(List<SvgElement> steps, List<SvgElement> into) {
    if (!steps.isEmpty()) {
      into.add(SvgElement.of("ol").holding(List.copyOf(steps)));
      steps.clear();
    }
  }

  private static boolean isStep(PatientWord word) {
    return word.token().startsWith("sheet.step.");
  }

  private List<SvgElement> elements(PatientWord word) {
    var pictures = new SheetPictures(sheet, dose);
    return switch (word) {
      case SHEET_HEAD_MAIN ->
          List.of(
              picture("square", Optional.of(pictures.square())),
              SvgElement.of("h1").saying(text(word)));
      case SHEET_RULER ->
          List.of(
              picture("size", pictures.trueSize()),
              picture("size", Optional.of(pictures.ruler())),
              paragraph("below", word));
      case SHEET_LOG_SHOT, SHEET_LOG_TWO, SHEET_LOG_FOUR -> List.of(toWriteOn(word));
      case SHEET_STRIP_TWO, SHEET_STRIP_FOUR -> List.of(paragraph("strip", word));
      case SHEET_DOSE_NEVER_MORE, SHEET_LONG_TWO, SHEET_LONG_FOUR, SHEET_KEEP_LAST ->
          List.of(paragraph("strong", word));
      case SHEET_DRAFT -> List.of(paragraph("draft", word));
      case SHEET_DOSE_DEVICE -> List.of(paragraph("dose", word));
      default ->
          word == BEFORE_PICTURE
              ? List.of(paragraph("dose", word), picture("picture", pictures.enlarged()))
              : List.of(
                  word.isHeading()
                      ? SvgElement.of("h2").saying(text(word))
                      : paragraph("plain", word));
    };
  }

  private SvgElement paragraph(String looks, PatientWord word) {
    return SvgElement.of("p").with("class", looks).saying(text(word));
  }

  private static SvgElement picture(String looks, Optional<SvgElement> drawn) {
    return SvgElement.of("div").with("class", looks).holding(drawn.stream().toList());
  }

  private SvgElement toWriteOn(PatientWord word) {
    return SvgElement.of("div")
        .with("class", "write")
        .holding(
            List.of(
                SvgElement.of("p").saying(text(word)),
                SvgElement.of("div").with("class", "line").saying("\u00a0")));
  }
}
