package rungwise.store.course;

import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.store.schema.tables.records.SheetMadeRecord;

/** Sheets for home, as rows and back. */
final class SheetRows {

  private SheetRows() {}

  static SheetMadeRecord row(CourseFact.SheetMade made) {
    HomeSheet sheet = made.sheet();
    var row = new SheetMadeRecord();
    row.setOrderEntry(made.order().text());
    row.setVialEntry(made.vial().text());
    row.setPlanEntry(made.plan().text());
    row.setSheetId(sheet.id());
    row.setCode(sheet.code().text());
    row.setLanguage(sheet.language().tag());
    row.setPaper(sheet.paper().token());
    row.setWordsVersion(sheet.wordsVersion());
    row.setAddress(sheet.address());
    row.setSaid(sheet.said());
    return row;
  }

  static CourseFact made(SheetMadeRecord row) {
    return new CourseFact.SheetMade(
        new EntryId(row.getOrderEntry()),
        new EntryId(row.getVialEntry()),
        new EntryId(row.getPlanEntry()),
        HomeSheet.read(
            row.getSheetId(),
            Language.of(row.getLanguage()).orElseThrow(),
            Paper.of(row.getPaper()).orElseThrow(),
            row.getWordsVersion(),
            row.getAddress(),
            row.getSaid()));
  }
}
