package rungwise.store.kill;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * What a data folder holds at a moment, and what a disk may hold of it when the power fails: what
 * was forced to it, and of what was written since, any sectors.
 */
final class Disk {

  private static final String END = "journal.end";
  private static final String DATABASE = "rungwise.db";
  private static final String LOG = "rungwise.db-wal";

  /**
   * Each is written and forced only after the next, so that a copy in this order, taken while
   * somebody writes, holds no file that is ahead of one it rests on.
   */
  private static final List<String> FILES = List.of(END, DATABASE, LOG, "journal.key");

  private static final int SECTOR = 512;

  private final Map<String, byte[]> files;

  private Disk(Map<String, byte[]> files) {
    this.files = files;
  }

  static Disk of(Path folder) throws IOException {
    var files = new LinkedHashMap<String, byte[]>();
    for (String name : FILES) {
      files.put(name, read(folder.resolve(name)));
    }
    return new Disk(files);
  }

  private static byte[] read(Path file) throws IOException {
    try {
      return Files.readAllBytes(file);
    } catch (NoSuchFileException notYet) {
      return new byte[0];
    }
  }

  private byte[] file(String name) {
    return files.getOrDefault(name, new byte[0]);
  }

  /**
   * What may be left after a power cut while a transaction was under way.
   *
   * @param forced this folder when the transaction before was acknowledged, and forced to the disk
   * @param written the folder before this one was acknowledged
   */
  static Disk cut(Disk forced, Disk written, Random random) {
    var files = new LinkedHashMap<>(written.files);
    boolean isLogForced = !forced.has(written, END) || !forced.has(written, DATABASE);
    if (!isLogForced) {
      files.put(LOG, sectors(forced.file(LOG), written.file(LOG), random));
    }
    files.put(DATABASE, sectors(forced.file(DATABASE), written.file(DATABASE), random));
    files.put(END, torn(forced.file(END), written.file(END), random));
    return new Disk(files);
  }

  /** A disk that said it had kept what it had not: all but the kept end is as it was before. */
  static Disk lost(Disk before, Disk now) {
    var files = new LinkedHashMap<>(before.files);
    files.put(END, now.file(END));
    return new Disk(files);
  }

  private boolean has(Disk other, String name) {
    return Arrays.equals(file(name), other.file(name));
  }

  /** Whether anything was written since. */
  boolean isAheadOf(Disk before) {
    return !has(before, LOG) || !has(before, DATABASE) || !has(before, END);
  }

  /** Of each sector what was there or what was written, and of what grew any length. */
  private static byte[] sectors(byte[] before, byte[] after, Random random) {
    int shorter = Math.min(before.length, after.length);
    int length = shorter + random.nextInt(Math.max(before.length, after.length) - shorter + 1);
    byte[] left = Arrays.copyOf(after, length);
    for (int at = 0; at < length; at += SECTOR) {
      if (random.nextBoolean()) {
        int end = Math.min(at + SECTOR, length);
        System.arraycopy(Arrays.copyOf(before, end), at, left, at, end - at);
      }
    }
    return left;
  }

  /** What was written up to some byte, and from there on what was there before. */
  private static byte[] torn(byte[] before, byte[] after, Random random) {
    int at = random.nextInt(after.length + 1);
    byte[] left = Arrays.copyOf(after, Math.max(at, before.length));
    System.arraycopy(Arrays.copyOf(before, left.length), at, left, at, left.length - at);
    return left;
  }

  void putInto(Path folder) throws IOException {
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      if (file.getValue().length > 0) {
        Files.write(folder.resolve(file.getKey()), file.getValue());
      }
    }
  }
}
