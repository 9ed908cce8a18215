package rungwise.web.factor;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/** A text as a square that a telephone's camera reads: dark on light, also in dark surroundings. */
final class QrPicture {

  private static final int QUIET_ZONE = 4;

  private QrPicture() {}

  /** One SVG element; the text is in it for cameras only, so its words say what it is for. */
  static String of(String text) {
    BitMatrix squares = squares(text);
    int width = squares.getWidth();
    var path = new StringBuilder();
    for (int y = 0; y < squares.getHeight(); y++) {
      for (int x = 0; x < width; x++) {
        if (squares.get(x, y)) {
          path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
        }
      }
    }
    return """
        <svg class="qr" role="img" aria-label="Square for the camera of the app; it holds the same \
        secret as the text below" viewBox="0 0 %d %d" shape-rendering="crispEdges">\
        <rect width="100%%" height="100%%" fill="#fff"/><path fill="#000" d="%s"/></svg>"""
        .formatted(width, squares.getHeight(), path);
  }

  private static BitMatrix squares(String text) {
    try {
      return new QRCodeWriter()
          .encode(
              text,
              BarcodeFormat.QR_CODE,
              0,
              0,
              Map.of(
                  EncodeHintType.MARGIN,
                  QUIET_ZONE,
                  EncodeHintType.ERROR_CORRECTION,
                  ErrorCorrectionLevel.M));
    } catch (WriterException e) {
      throw new IllegalStateException("bug: too long for a square", e);
    }
  }
}
