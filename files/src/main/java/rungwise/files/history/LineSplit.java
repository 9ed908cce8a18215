package rungwise.files.history;

/** Where the values of a line stand among its bytes, if that is plain to see. */
final class LineSplit {

  private final int[] from;
  private final int[] to;

  LineSplit(int width) {
    from = new int[width];
    to = new int[width];
  }

  int from(int cell) {
    return from[cell];
  }

  int to(int cell) {
    return to[cell];
  }

  /**
   * Whether a line is one value for each column, each without spaces around it, and in quotation
   * marks at most as a whole. Of any other line nothing is said.
   */
  boolean split(byte[] bytes, int start, int end) {
    int cell = 0;
    int first = start;
    for (int at = start; at <= end; at++) {
      if (at == end || bytes[at] == ',') {
        if (cell == from.length || !keep(cell, bytes, first, at)) {
          return false;
        }
        cell++;
        first = at + 1;
      }
    }
    return cell == from.length;
  }

  private boolean keep(int cell, byte[] bytes, int first, int end) {
    boolean isQuoted = end - first > 1 && bytes[first] == '"' && bytes[end - 1] == '"';
    int inside = isQuoted ? first + 1 : first;
    int insideEnd = isQuoted ? end - 1 : end;
    for (int at = inside; at < insideEnd; at++) {
      if (bytes[at] == '"' || bytes[at] == '\r') {
        return false;
      }
    }
    from[cell] = inside;
    to[cell] = insideEnd;
    return inside == insideEnd || !(isSpace(bytes[inside]) || isSpace(bytes[insideEnd - 1]));
  }

  /** Or another character that cannot be seen; spaces outside ASCII are not known here. */
  private static boolean isSpace(byte one) {
    return one >= 0 && one <= ' ';
  }
}
