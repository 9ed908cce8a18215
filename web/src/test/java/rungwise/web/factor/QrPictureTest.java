package rungwise.web.factor;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.Arrays;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class QrPictureTest {

  private static final String TEXT =
      "otpauth://totp/Harbour%20Lane:ana.ruiz?secret=GEZDGNBVGY3TQOJQ&issuer=Harbour%20Lane";
  private static final int PIXELS_OF_A_SQUARE = 8;
  private static final int WHITE = 0xffffff;

  /** Draws the path of the picture and reads it with the library's reader, as a camera would. */
  @Test
  void a_camera_reads_the_text_back() throws Exception {
    String svg = QrPicture.of(TEXT);
    var box = Pattern.compile("viewBox=\"0 0 (\\d+) \\1\"").matcher(svg);
    assertThat(box.find()).isTrue();
    int width = Integer.parseInt(box.group(1)) * PIXELS_OF_A_SQUARE;
    var pixels = new int[width * width];
    Arrays.fill(pixels, WHITE);
    Pattern.compile("M(\\d+) (\\d+)h1v1h-1z")
        .matcher(svg)
        .results()
        .forEach(
            square ->
                paint(
                    pixels,
                    width,
                    Integer.parseInt(square.group(1)),
                    Integer.parseInt(square.group(2))));

    String read =
        new QRCodeReader()
            .decode(
                new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, width, pixels))))
            .getText();

    assertThat(read).isEqualTo(TEXT);
  }

  private static void paint(int[] pixels, int width, int x, int y) {
    for (int row = 0; row < PIXELS_OF_A_SQUARE; row++) {
      int start = (y * PIXELS_OF_A_SQUARE + row) * width + x * PIXELS_OF_A_SQUARE;
      Arrays.fill(pixels, start, start + PIXELS_OF_A_SQUARE, 0);
    }
  }

  @Test
  void the_picture_holds_no_script_and_no_style() {
    assertThat(QrPicture.of(TEXT)).doesNotContain("<script", "style=", "otpauth");
  }
}
