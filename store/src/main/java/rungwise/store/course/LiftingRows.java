package rungwise.store.course;

import java.util.List;
import java.util.Optional;
import org.jooq.TableRecord;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.soundness.Acknowledgement.Side;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Volume;
import rungwise.store.schema.tables.records.CorrectionConfirmedRecord;
import rungwise.store.schema.tables.records.EmergencyReviewedEndRecord;
import rungwise.store.schema.tables.records.FaultAcknowledgedRecord;
import rungwise.store.schema.tables.records.PastReviewedRecord;
import rungwise.store.schema.tables.records.VolumeReopenedRecord;
import rungwise.store.words.Tokens;

/** What only a prescriber lifts, as rows and back. */
final class LiftingRows {

  private LiftingRows() {}

  static VolumeReopenedRecord row(CourseFact.VolumeReopened reopened) {
    var row = new VolumeReopenedRecord();
    row.setPreparation(reopened.preparation().value());
    row.setUpToMicrolitres(reopened.upTo().microlitres());
    return row;
  }

  static CourseFact reopened(VolumeReopenedRecord row) {
    return new CourseFact.VolumeReopened(
        new PreparationId(row.getPreparation()), Volume.ofMicrolitres(row.getUpToMicrolitres()));
  }

  /** A review that says nothing of the end has no row. */
  static List<TableRecord<?>> rows(CourseFact.EmergencyReviewed reviewed) {
    return reviewed.softWhenSeen().stream()
        .<TableRecord<?>>map(
            soft -> {
              var row = new EmergencyReviewedEndRecord();
              row.setSoftWhenSeen(soft);
              return row;
            })
        .toList();
  }

  static CourseFact reviewed(EmergencyReviewedEndRecord row) {
    return new CourseFact.EmergencyReviewed(Optional.ofNullable(row.getSoftWhenSeen()));
  }

  static CorrectionConfirmedRecord row(CourseFact.CorrectionConfirmed confirmed) {
    var row = new CorrectionConfirmedRecord();
    row.setCorrection(confirmed.correction().text());
    return row;
  }

  static CourseFact confirmed(CorrectionConfirmedRecord row) {
    return new CourseFact.CorrectionConfirmed(new EntryId(row.getCorrection()));
  }

  static FaultAcknowledgedRecord row(CourseFact.FaultAcknowledged acknowledged) {
    var row = new FaultAcknowledgedRecord();
    row.setFaultySeq(acknowledged.faulty());
    row.setWasRead(acknowledged.read());
    row.setSide(Tokens.of(acknowledged.side()));
    return row;
  }

  static CourseFact acknowledged(FaultAcknowledgedRecord row) {
    return new CourseFact.FaultAcknowledged(
        row.getFaultySeq(), row.getWasRead(), Tokens.read(Side.class, row.getSide()));
  }

  static PastReviewedRecord row(CourseFact.PastReviewed reviewed) {
    var row = new PastReviewedRecord();
    row.setReferencePreparation(reviewed.reference().map(PreparationId::value).orElse(null));
    return row;
  }

  static CourseFact past(PastReviewedRecord row) {
    return new CourseFact.PastReviewed(
        Optional.ofNullable(row.getReferencePreparation()).map(PreparationId::new));
  }
}
