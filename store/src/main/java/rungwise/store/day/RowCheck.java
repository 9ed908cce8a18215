package rungwise.store.day;

import static rungwise.store.schema.Tables.DAY_ROW;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.SecretKey;
import javax.crypto.spec.SecretKeySpec;
import org.jooq.Field;
import rungwise.store.schema.tables.records.DayRowRecord;

/** The keyed check of a row (HMAC-SHA-256, RFC 2104) over everything else in it. */
public final class RowCheck {

  private static final String ALGORITHM = "HmacSHA256";

  private final SecretKeySpec key;

  /**
   * Checks under a key.
   *
   * @param key used for nothing else
   */
  public RowCheck(SecretKey key) {
    this.key = new SecretKeySpec(key.getEncoded(), ALGORITHM);
  }

  String of(DayRowRecord row) {
    var text = new StringBuilder();
    for (Field<?> field : row.fields()) {
      if (!field.equals(DAY_ROW.ROW_CHECK)) {
        String value = String.valueOf(row.get(field));
        text.append(value.length()).append(':').append(value);
      }
    }
    return of(text.toString());
  }

  boolean holds(DayRowRecord row) {
    return of(row).equals(row.getRowCheck());
  }

  /** The check of a text, as 64 hexadecimal digits. */
  String of(String text) {
    try {
      var mac = Mac.getInstance(ALGORITHM);
      mac.init(key);
      return HexFormat.of().formatHex(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("bug: every Java has " + ALGORITHM, e);
    }
  }
}
