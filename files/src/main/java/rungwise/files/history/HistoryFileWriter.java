package rungwise.files.history;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import rungwise.clinic.TableText;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.TimeSpan;

/** Writes histories as a history file with every column; the same ones give the same bytes. */
public final class HistoryFileWriter {

  private static final BigDecimal MILLISECONDS_IN_A_MINUTE = BigDecimal.valueOf(60_000);

  /** So many that reading rounds them up to the same millisecond. */
  private static final int DECIMALS_OF_A_MINUTE = 10;

  private HistoryFileWriter() {}

  /** Writes all of them; the stream stays open. */
  public static void write(List<PastHistory> histories, OutputStream stream) {
    String[] header = Arrays.stream(Column.values()).map(Column::token).toArray(String[]::new);
    CSVFormat format = CSVFormat.RFC4180.builder().setRecordSeparator("\n").setHeader(header).get();
    try {
      var writer = new OutputStreamWriter(stream, StandardCharsets.UTF_8);
      var printer = new CSVPrinter(writer, format);
      for (PastHistory history : histories) {
        for (PastInjection injection : history.injections()) {
          printer.printRecord(values(history, injection));
        }
      }
      printer.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** In the order of {@link Column}. */
  private static List<String> values(PastHistory history, PastInjection one) {
    return List.of(
        TableText.safe(history.patient()),
        TableText.safe(history.group()),
        Integer.toString(one.number()),
        one.volume().millilitresText(),
        plain(one.potency()),
        one.strength().map(HistoryFileWriter::plain).orElse(""),
        Integer.toString(one.grade().number()),
        from(one.soft()).map(HistoryFileWriter::minutes).orElse(""),
        status(one.soft()),
        one.soft() instanceof SoftAfter.Between between ? minutes(between.before()) : "",
        one.setting().map(setting -> setting.at().toString()).orElse(""),
        one.preparation().map(PreparationId::value).map(TableText::safe).orElse(""),
        one.setting().map(PastInjection.Setting::barrel).map(TableText::safe).orElse(""));
  }

  private static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  private static Optional<TimeSpan> from(SoftAfter soft) {
    return switch (soft) {
      case SoftAfter.Exactly exactly -> Optional.of(exactly.duration());
      case SoftAfter.AtLeast atLeast -> Optional.of(atLeast.duration());
      case SoftAfter.Between between -> Optional.of(between.from());
      case SoftAfter.NotKnown notKnown -> Optional.empty();
    };
  }

  private static String status(SoftAfter soft) {
    return switch (soft) {
      case SoftAfter.Exactly exactly -> "exact";
      case SoftAfter.AtLeast atLeast -> "right";
      case SoftAfter.Between between -> "interval";
      case SoftAfter.NotKnown notKnown -> "none";
    };
  }

  private static String minutes(TimeSpan span) {
    return BigDecimal.valueOf(span.milliseconds())
        .divide(MILLISECONDS_IN_A_MINUTE, DECIMALS_OF_A_MINUTE, RoundingMode.DOWN)
        .stripTrailingZeros()
        .toPlainString();
  }
}
