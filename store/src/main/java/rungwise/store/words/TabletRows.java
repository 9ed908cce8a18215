package rungwise.store.words;

import rungwise.clinic.course.CourseFact;
import rungwise.dosing.known.Tablet;
import rungwise.store.schema.tables.records.DailyTabletDecidedRecord;
import rungwise.store.schema.tables.records.TabletTakenRecord;

/** Tablets for erections, as rows and back. */
public final class TabletRows {

  private TabletRows() {}

  public static TabletTakenRecord row(CourseFact.TabletTaken taken) {
    var row = new TabletTakenRecord();
    row.setTablet(Tokens.of(taken.tablet()));
    row.setTakenAt(taken.at());
    return row;
  }

  public static CourseFact taken(TabletTakenRecord row) {
    return new CourseFact.TabletTaken(Tokens.read(Tablet.class, row.getTablet()), row.getTakenAt());
  }

  public static DailyTabletDecidedRecord row(CourseFact.DailyTabletDecided decided) {
    var row = new DailyTabletDecidedRecord();
    row.setIsAllowed((short) (decided.isAllowed() ? 1 : 0));
    return row;
  }

  public static CourseFact decided(DailyTabletDecidedRecord row) {
    return new CourseFact.DailyTabletDecided(row.getIsAllowed() == 1);
  }
}
