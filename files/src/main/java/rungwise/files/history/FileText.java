package rungwise.files.history;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import rungwise.quantities.Reading;

/** The text of a file, unpacked and decoded, or the line at which that ends. */
final class FileText {

  /** A quarter of a gigabyte: far above any clinic's history, far below what a machine holds. */
  static final int MOST_BYTES = 1 << 28;

  private static final String PACKED = ".gz";
  private static final int FIRST_OF_GZIP = 0x1f;
  private static final int SECOND_OF_GZIP = 0x8b;
  private static final int BYTE = 0xff;
  private static final int BLOCK = 1 << 16;
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private FileText() {}

  static Reading<String> of(String name, byte[] content) {
    boolean isPacked = isPacked(name);
    if (isPacked != startsLikeGzip(content)) {
      return Reading.refused(
          isPacked
              ? "line 1: " + name + " is not packed with gzip: pack it, or name it .csv"
              : "line 1: " + name + " is packed with gzip: name it .csv.gz, or unpack it");
    }
    return isPacked ? unpacked(name, content) : decoded(content);
  }

  /** Whether a file of this name is to be unpacked. */
  static boolean isPacked(String name) {
    return name.toLowerCase(Locale.ROOT).endsWith(PACKED);
  }

  private static boolean startsLikeGzip(byte[] content) {
    return content.length > 1
        && (content[0] & BYTE) == FIRST_OF_GZIP
        && (content[1] & BYTE) == SECOND_OF_GZIP;
  }

  private static Reading<String> unpacked(String name, byte[] content) {
    var bytes = new ByteArrayOutputStream();
    try (var in = new GZIPInputStream(new ByteArrayInputStream(content))) {
      byte[] block = new byte[BLOCK];
      for (int count = in.read(block); count >= 0; count = in.read(block)) {
        bytes.write(block, 0, count);
        if (bytes.size() > MOST_BYTES) {
          return Reading.refused(
              lineAfter(bytes.toByteArray(), bytes.size())
                  + "the unpacked file is larger than a history can be");
        }
      }
    } catch (EOFException cut) {
      return Reading.refused(
          lineAfter(bytes.toByteArray(), bytes.size())
              + name
              + " ends in the middle: copy the whole file again");
    } catch (ZipException broken) {
      return Reading.refused(
          lineAfter(bytes.toByteArray(), bytes.size())
              + name
              + " is not a sound gzip file: copy it again, or pack it again");
    } catch (IOException impossible) {
      throw new IllegalStateException("bug: bytes in memory cannot be read", impossible);
    }
    return decoded(bytes.toByteArray());
  }

  private static Reading<String> decoded(byte[] bytes) {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length);
    CoderResult result =
        StandardCharsets.UTF_8.newDecoder().decode(in, out, /* endOfInput= */ true);
    if (result.isError()) {
      return Reading.refused(
          lineAfter(bytes, in.position()) + "this is not UTF-8 text: save the file as UTF-8");
    }
    String text = out.flip().toString();
    return Reading.of(text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text);
  }

  private static String lineAfter(byte[] bytes, int count) {
    long line = 1;
    for (int i = 0; i < count; i++) {
      line += bytes[i] == '\n' ? 1 : 0;
    }
    return "line " + line + ": ";
  }
}
