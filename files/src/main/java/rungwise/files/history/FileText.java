package rungwise.files.history;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import rungwise.quantities.Reading;

/** The text of a file, unpacked and decoded, or the line at which that ends. */
final class FileText {

  /** What a fit reads, of many clinics: a quarter of a gigabyte. */
  static final int MOST_BYTES = 1 << 28;

  /** What is brought into a record or read for one man, of which each cell is kept: 16 MB. */
  static final int MOST_BYTES_OF_ONE = 1 << 24;

  private static final int MEGA = 20;
  private static final int LONGEST_LINE = 1 << 16;

  private static final String PACKED = ".gz";
  private static final int FIRST_OF_GZIP = 0x1f;
  private static final int SECOND_OF_GZIP = 0x8b;
  private static final int BYTE = 0xff;
  private static final int BLOCK = 1 << 16;
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private FileText() {}

  /**
   * The text of a file.
   *
   * @param most how many bytes it may have once unpacked
   */
  static Reading<String> of(String name, byte[] content, long most) {
    boolean isPacked = isPacked(name);
    if (isPacked != startsLikeGzip(content)) {
      return Reading.refused(
          isPacked
              ? "line 1: " + name + " is not packed with gzip: pack it, or name it .csv"
              : "line 1: " + name + " is packed with gzip: name it .csv.gz, or unpack it");
    }
    try (InputStream raw = new ByteArrayInputStream(content);
        InputStream in = isPacked ? new GZIPInputStream(raw, BLOCK) : raw) {
      return read(name, in, most);
    } catch (IOException broken) {
      return Reading.refused(
          "line 1: " + name + " is not a sound gzip file: copy it again, or pack it again");
    }
  }

  /** Whether a file of this name is to be unpacked. */
  static boolean isPacked(String name) {
    return name.toLowerCase(Locale.ROOT).endsWith(PACKED);
  }

  /** What a stream is called, so that its name tells whether it is to be unpacked. */
  static String named(String name, byte[] content) {
    return startsLikeGzip(content) ? name + PACKED : name;
  }

  private static boolean startsLikeGzip(byte[] content) {
    return content.length > 1
        && (content[0] & BYTE) == FIRST_OF_GZIP
        && (content[1] & BYTE) == SECOND_OF_GZIP;
  }

  private static Reading<String> read(String name, InputStream in, long most) throws IOException {
    var text = new Decoded(most);
    byte[] block = new byte[BLOCK];
    try {
      for (int count = in.read(block); count >= 0; count = in.read(block)) {
        Optional<String> fault = text.take(ByteBuffer.wrap(block, 0, count));
        if (fault.isPresent()) {
          return Reading.refused(fault.get());
        }
      }
    } catch (EOFException cut) {
      return Reading.refused(text.line() + name + " ends in the middle: copy the whole file again");
    } catch (ZipException broken) {
      return Reading.refused(
          text.line() + name + " is not a sound gzip file: copy it again, or pack it again");
    }
    return text.end();
  }

  /**
   * Text as it is decoded block by block, so that no more of it is in memory than may be. What goes
   * on in one line for longer than any history does is refused before it is all there.
   */
  private static final class Decoded {

    private final long most;
    private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    private final CharBuffer out = CharBuffer.allocate(BLOCK);
    private final StringBuilder text = new StringBuilder();
    private ByteBuffer rest = ByteBuffer.allocate(0);
    private long bytes = 0;
    private long lines = 0;
    private int lineBegins = 0;

    Decoded(long most) {
      this.most = most;
    }

    /** Takes the next block; gives back why it is refused. */
    Optional<String> take(ByteBuffer block) {
      bytes += block.remaining();
      if (bytes > most) {
        return Optional.of(
            line()
                + "the file is larger, once unpacked, than "
                + (most >> MEGA)
                + " MB: divide it");
      }
      ByteBuffer in = ByteBuffer.allocate(rest.remaining() + block.remaining());
      in.put(rest).put(block).flip();
      Optional<String> fault = decode(in, /* isEnd= */ false);
      rest = in;
      return fault;
    }

    Reading<String> end() {
      Optional<String> fault = decode(rest, /* isEnd= */ true);
      if (fault.isPresent()) {
        return Reading.refused(fault.get());
      }
      int begin = text.indexOf(BYTE_ORDER_MARK) == 0 ? 1 : 0;
      return Reading.of(text.substring(begin));
    }

    private Optional<String> decode(ByteBuffer in, boolean isEnd) {
      CoderResult result = CoderResult.OVERFLOW;
      while (result.isOverflow()) {
        result = decoder.decode(in, out, isEnd);
        append();
      }
      if (result.isError()) {
        return Optional.of(line() + "this is not UTF-8 text: save the file as UTF-8");
      }
      return text.length() - lineBegins > LONGEST_LINE
          ? Optional.of(line() + "this line is longer than a history's can be: it has no end")
          : Optional.empty();
    }

    private void append() {
      out.flip();
      while (out.hasRemaining()) {
        char next = out.get();
        text.append(next);
        if (next == '\n') {
          lines++;
          lineBegins = text.length();
        }
      }
      out.clear();
    }

    /** "line 3: ", the line that is being read. */
    String line() {
      return "line " + (lines + 1) + ": ";
    }
  }
}
