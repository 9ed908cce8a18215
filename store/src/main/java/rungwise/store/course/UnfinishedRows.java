package rungwise.store.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.TableRecord;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.EntryId;
import rungwise.store.schema.tables.records.ReportUnfinishedLineRecord;
import rungwise.store.schema.tables.records.ReportUnfinishedRecord;

/** Reports that may mean 4 hours and are not complete, as rows and back. */
final class UnfinishedRows {

  private UnfinishedRows() {}

  static List<TableRecord<?>> rows(CourseFact.ReportUnfinished unfinished) {
    var rows = new ArrayList<TableRecord<?>>();
    var head = new ReportUnfinishedRecord();
    head.setInjectedAt(unfinished.injectedAt().orElse(null));
    head.setAbout(unfinished.about().map(EntryId::text).orElse(null));
    rows.add(head);
    int line = 0;
    for (CourseFact.ReportUnfinished.Said said : unfinished.said()) {
      line++;
      var row = new ReportUnfinishedLineRecord();
      row.setLine(line);
      row.setPart(said.part());
      row.setSaid(said.text());
      rows.add(row);
    }
    return rows;
  }

  static CourseFact unfinished(ReportUnfinishedRecord row, List<ReportUnfinishedLineRecord> lines) {
    return new CourseFact.ReportUnfinished(
        Optional.ofNullable(row.getInjectedAt()),
        Optional.ofNullable(row.getAbout()).map(EntryId::new),
        lines.stream()
            .map(line -> new CourseFact.ReportUnfinished.Said(line.getPart(), line.getSaid()))
            .toList());
  }
}
