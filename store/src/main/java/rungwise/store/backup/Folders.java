package rungwise.store.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import rungwise.store.database.DataFolder;

/** What is done with files of a copy so that they are really on the disk. */
final class Folders {

  private static final String ALGORITHM = "SHA-256";

  private Folders() {}

  /** Whether there is nothing there, or a folder with nothing in it but files of these names. */
  static boolean isEmptyBut(Path folder, List<String> names) throws IOException {
    if (Files.notExists(folder)) {
      return true;
    }
    try (Stream<Path> found = Files.list(folder)) {
      return found.map(file -> file.getFileName().toString()).allMatch(names::contains);
    }
  }

  /** Writes a file that only its owner can read. */
  static void write(Path file, byte[] bytes) throws IOException {
    DataFolder.createForOwner(file);
    Files.write(file, bytes);
    force(file);
  }

  static void copy(Path from, Path to) throws IOException {
    DataFolder.createForOwner(to);
    try (InputStream in = Files.newInputStream(from);
        var out = Files.newOutputStream(to)) {
      in.transferTo(out);
    }
    force(to);
  }

  /** Returns when a file, or the list of a folder, is on the disk. */
  static void force(Path path) throws IOException {
    boolean isFolder = Files.isDirectory(path);
    try (var channel =
        FileChannel.open(path, isFolder ? StandardOpenOption.READ : StandardOpenOption.WRITE)) {
      channel.force(true);
    } catch (IOException e) {
      if (!isFolder) {
        throw e; // some file systems open no folder; the file itself is on the disk
      }
    }
  }

  static String hash(Path file) throws IOException {
    try (var in = new DigestInputStream(Files.newInputStream(file), digest())) {
      in.transferTo(OutputStream.nullOutputStream());
      return HexFormat.of().formatHex(in.getMessageDigest().digest());
    }
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance(ALGORITHM);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("bug: every Java has " + ALGORITHM, e);
    }
  }

  /** Removes a folder with all that is in it; does nothing if there is none. */
  static void remove(Path folder) throws IOException {
    if (Files.notExists(folder)) {
      return;
    }
    try (Stream<Path> found = Files.walk(folder)) {
      for (Path file : found.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
