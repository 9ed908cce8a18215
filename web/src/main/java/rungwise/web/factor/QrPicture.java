package rungwise.web.factor;

import rungwise.sheets.CameraSquare;

/** A text as a square that a telephone's camera reads: dark on light, also in dark surroundings. */
final class QrPicture {

  private QrPicture() {}

  /** One SVG element; the text is in it for cameras only, so its words say what it is for. */
  static String of(String text) {
    CameraSquare square = CameraSquare.of(text);
    return """
        <svg class="qr" role="img" aria-label="Square for the camera of the app; it holds the same \
        secret as the text below" viewBox="0 0 %d %d" shape-rendering="crispEdges">\
        <rect width="100%%" height="100%%" fill="#fff"/><path fill="#000" d="%s"/></svg>"""
        .formatted(square.width(), square.width(), square.path());
  }
}
