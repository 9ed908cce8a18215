package rungwise.sheets;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/**
 * A text as a square that a camera reads (ISO/IEC 18004).
 *
 * @param width how many fields it has on a side, with the quiet zone around it
 * @param path its dark fields as the path of a drawing, one unit each
 */
public record CameraSquare(int width, String path) {

  private static final int QUIET_ZONE = 4;

  /** The square of a text. */
  public static CameraSquare of(String text) {
    BitMatrix fields = fields(text);
    int width = fields.getWidth();
    var path = new StringBuilder();
    for (int y = 0; y < width; y++) {
      for (int x = 0; x < width; x++) {
        if (fields.get(x, y)) {
          path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
        }
      }
    }
    return new CameraSquare(width, path.toString());
  }

  private static BitMatrix fields(String text) {
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
