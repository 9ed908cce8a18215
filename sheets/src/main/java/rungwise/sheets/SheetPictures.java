package rungwise.sheets;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.Slot;
import rungwise.dosing.known.Dose;
import rungwise.drawing.BarrelDrawing;
import rungwise.drawing.DrawnDose;
import rungwise.drawing.MarkWords;
import rungwise.drawing.SvgElement;

/** The drawings of a sheet, each with the words that say the same. */
record SheetPictures(HomeSheet sheet, Dose dose) {

  /** As wide as either paper allows, so that every number in it is 12 points or more. */
  private static final int ENLARGED_MILLIMETRES = 162;

  /** The line on which a ruler is laid; the sheet says the same length in words. */
  static final int RULER_MILLIMETRES = 50;

  private static final int RULER_HEIGHT = 6;
  private static final double RULER_STROKE = 0.5;
  private static final int SQUARE_MILLIMETRES = 32;

  private PatientWords texts() {
    return PatientWords.in(sheet.language());
  }

  private Optional<DrawnDose> drawn() {
    return BarrelScales.of(dose.barrel())
        .map(
            scale ->
                new DrawnDose(
                    scale,
                    dose.volume(),
                    MarkWords.of(scale, dose.volume(), PatientLines.in(sheet.language())),
                    sheet.filled(Slot.SYRINGE).orElseThrow(),
                    texts().text(PatientWord.PART_NEEDLE),
                    texts().text(PatientWord.PART_TRUE_SIZE, sheet.filling())));
  }

  /** The syringe with its words and numbers, larger than it is; none for a device without lines. */
  Optional<SvgElement> enlarged() {
    return drawn()
        .map(
            drawn ->
                BarrelDrawing.enlarged(drawn, ENLARGED_MILLIMETRES)
                    .with("font-family", SheetFont.FAMILY)
                    .with("alt", texts().text(PatientWord.PART_ENLARGED, sheet.filling())));
  }

  /** The syringe as large as it is. */
  Optional<SvgElement> trueSize() {
    return drawn().map(drawn -> BarrelDrawing.trueSize(drawn).with("alt", drawn.description()));
  }

  /** The line on which a ruler is laid. */
  SvgElement ruler() {
    return sized(RULER_MILLIMETRES + 2 * RULER_STROKE, RULER_HEIGHT)
        .with("alt", texts().text(PatientWord.PART_RULER_LINE, sheet.filling()))
        .holding(
            List.of(
                line(RULER_STROKE, RULER_HEIGHT / 2.0, RULER_STROKE + RULER_MILLIMETRES),
                tick(RULER_STROKE),
                tick(RULER_STROKE + RULER_MILLIMETRES)));
  }

  private static SvgElement line(double x1, double y, double x2) {
    return stroke().with("x1", x1).with("y1", y).with("x2", x2).with("y2", y);
  }

  private static SvgElement tick(double x) {
    return stroke().with("x1", x).with("y1", 0).with("x2", x).with("y2", RULER_HEIGHT);
  }

  private static SvgElement stroke() {
    return SvgElement.of("line").with("stroke", "#000").with("stroke-width", RULER_STROKE);
  }

  /** The square that says where it is told whether the sheet is current. */
  SvgElement square() {
    CameraSquare square = CameraSquare.of(sheet.square());
    return SvgElement.of("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("width", SQUARE_MILLIMETRES + "mm")
        .with("height", SQUARE_MILLIMETRES + "mm")
        .with("viewBox", "0 0 " + square.width() + " " + square.width())
        .with("alt", texts().text(PatientWord.PART_SQUARE, Map.of()))
        .holding(List.of(SvgElement.of("path").with("fill", "#000").with("d", square.path())));
  }

  private static SvgElement sized(double width, double height) {
    return SvgElement.of("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("width", width + "mm")
        .with("height", height + "mm")
        .with("viewBox", "0 0 " + width + " " + height);
  }
}
