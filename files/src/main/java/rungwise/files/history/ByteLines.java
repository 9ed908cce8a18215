package rungwise.files.history;

import java.io.IOException;
import java.io.InputStream;

/** The lines of a stream one after another, each where it stands among the bytes read last. */
final class ByteLines {

  private static final int BLOCK = 1 << 16;
  private static final int LONGEST_LINE = 1 << 20;

  private final InputStream in;
  private byte[] bytes = new byte[BLOCK];

  /** How many of the bytes have been read, and of these how many are behind. */
  private int filled = 0;

  private int behind = 0;

  private int start = 0;
  private int end = 0;
  private boolean isEnded = false;
  private long read = 0;

  ByteLines(InputStream in) {
    this.in = in;
  }

  byte[] bytes() {
    return bytes;
  }

  /** Where the line begins. */
  int start() {
    return start;
  }

  /** Where it ends, its line feed and a carriage return before that left out. */
  int end() {
    return end;
  }

  /** Whether it ends with a line feed, as all but the last one do. */
  boolean isEnded() {
    return isEnded;
  }

  /** How many bytes have been read from the stream. */
  long read() {
    return read;
  }

  /** Whether there is another line, which is then the one told of. It may be longer than any. */
  boolean next() throws IOException {
    start = behind;
    int at = behind;
    while (true) {
      while (at < filled && bytes[at] != '\n') {
        at++;
      }
      if (at < filled) {
        return found(at, /* isEnded= */ true);
      }
      at -= start;
      if (!fill()) {
        return filled > start && found(filled, /* isEnded= */ false);
      }
    }
  }

  /** Whether it is longer than any line of a history; then nothing more is read. */
  boolean isTooLong() {
    return end - start >= LONGEST_LINE;
  }

  private boolean found(int at, boolean isEnded) {
    this.isEnded = isEnded;
    behind = isEnded ? at + 1 : at;
    end = isEnded && at > start && bytes[at - 1] == '\r' ? at - 1 : at;
    return true;
  }

  /** Moves what is left to the front and reads more behind it; false at the end. */
  private boolean fill() throws IOException {
    int left = filled - start;
    if (left >= LONGEST_LINE) {
      return false;
    }
    byte[] into = left > bytes.length / 2 ? new byte[2 * bytes.length] : bytes;
    System.arraycopy(bytes, start, into, 0, left);
    bytes = into;
    start = 0;
    filled = left;
    int count = in.read(bytes, filled, bytes.length - filled);
    filled += Math.max(count, 0);
    read += Math.max(count, 0);
    return count > 0;
  }
}
