package rungwise.store.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.GeneralSecurityException;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import javax.crypto.KDF;
import javax.crypto.Mac;
import javax.crypto.SecretKey;
import javax.crypto.spec.HKDFParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.database.DataFolder;

/**
 * The secret that seals the journal: 256 random bits in a file beside the database. Who can change
 * the database but not read this file cannot make a seal (HMAC-SHA-256, RFC 2104).
 */
public final class JournalKey {

  /** The name of its file in a data folder. */
  public static final String FILE = "journal.key";

  private static final String ALGORITHM = "HmacSHA256";
  private static final String DERIVATION = "HKDF-SHA256";
  private static final String CIPHER = "AES";
  private static final int BYTES = 32;
  private static final int MARK_DIGITS = 16;

  private final SecretKeySpec key;

  /** With the key in it: a copy of it costs less than a new one, and each course asks many. */
  private final Mac ready;

  private JournalKey(byte[] key) {
    this.key = new SecretKeySpec(key, ALGORITHM);
    this.ready = ready(this.key);
  }

  private static Mac ready(SecretKeySpec key) {
    try {
      var mac = Mac.getInstance(ALGORITHM);
      mac.init(key);
      return mac;
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("bug: every Java has " + ALGORITHM, e);
    }
  }

  /**
   * The folder's key, made first if the folder is new.
   *
   * @throws CannotOpenStore if there is a database but no key, or the key cannot be read
   */
  public static JournalKey in(DataFolder folder, boolean isNewFolder) {
    Path file = folder.file(FILE);
    if (Files.notExists(file) && isNewFolder) {
      try {
        write(file);
      } catch (IOException e) {
        throw isUnreadable(file, e);
      }
    }
    return read(file);
  }

  /**
   * The key of a folder that is only looked at.
   *
   * @throws CannotOpenStore if there is none, or it cannot be read
   */
  public static JournalKey keptIn(Path folder) {
    return read(folder.resolve(FILE));
  }

  /**
   * The key in a file that may lie anywhere.
   *
   * @throws CannotOpenStore if there is none, or it cannot be read
   */
  public static JournalKey at(Path file) {
    return read(file);
  }

  /** Tells this key from others, and gives nothing of it away: 16 hexadecimal digits. */
  public String mark() {
    return seal("mark of the key\n").substring(0, MARK_DIGITS);
  }

  private static JournalKey read(Path file) {
    if (Files.notExists(file)) {
      throw new CannotOpenStore(
          "The key file " + file + " is missing: bring it back from where backups are kept.");
    }
    try {
      byte[] key = HexFormat.of().parseHex(Files.readString(file).strip());
      if (key.length == BYTES) {
        return new JournalKey(key);
      }
    } catch (IllegalArgumentException e) {
      throw isDamaged(file, e);
    } catch (IOException e) {
      throw isUnreadable(file, e);
    }
    throw isDamaged(file, new IllegalArgumentException("wrong length"));
  }

  private static CannotOpenStore isUnreadable(Path file, Exception cause) {
    return new CannotOpenStore("The key file " + file + " cannot be read or written.", cause);
  }

  private static CannotOpenStore isDamaged(Path file, Exception cause) {
    return new CannotOpenStore(
        "The key file " + file + " is damaged: bring it back from where backups are kept.", cause);
  }

  /** Written under another name first, so that a half-written key is never taken for one. */
  private static void write(Path file) throws IOException {
    var random = new byte[BYTES];
    new SecureRandom().nextBytes(random);
    String line = HexFormat.of().formatHex(random) + "\n";
    Path draft = file.resolveSibling(FILE + ".new");
    DataFolder.createForOwner(draft);
    try (var channel = FileChannel.open(draft, StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.wrap(line.getBytes(StandardCharsets.US_ASCII)));
      channel.force(true);
    }
    Files.move(draft, file);
  }

  /**
   * Another key, for another purpose, that says nothing about this one (HKDF-SHA-256, RFC 5869).
   * There is no further file to keep, to back up or to lose.
   */
  public SecretKey derived(String purpose) {
    try {
      byte[] about = ("rungwise " + purpose).getBytes(StandardCharsets.UTF_8);
      return KDF.getInstance(DERIVATION)
          .deriveKey(CIPHER, HKDFParameterSpec.ofExtract().addIKM(key).thenExpand(about, BYTES));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("bug: every Java has " + DERIVATION, e);
    }
  }

  /** The seal of a text, as 64 hexadecimal digits. */
  String seal(String text) {
    try {
      var mac = (Mac) ready.clone();
      return HexFormat.of().formatHex(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
    } catch (CloneNotSupportedException e) {
      throw new IllegalStateException("bug: " + ALGORITHM + " of Java can be copied", e);
    }
  }
}
