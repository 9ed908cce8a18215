package rungwise.web.callbook;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.callbook.CallBook;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.callbook.Department;
import rungwise.clinic.reach.Telephone;

/**
 * An emergency department as shown.
 *
 * @param entry by which it is changed
 * @param link to dial it; empty where it must be dialled by hand
 */
public record DepartmentLine(String entry, Department department, Optional<String> link) {

  /** The departments on the clinic's list. */
  public static List<DepartmentLine> all(CallBooks books) {
    return books.departments().stream().map(DepartmentLine::of).toList();
  }

  private static DepartmentLine of(CallBook.Kept kept) {
    return new DepartmentLine(
        kept.entry().text(),
        kept.department(),
        Telephone.dialled(kept.department().telephone()).map(digits -> "tel:" + digits));
  }
}
