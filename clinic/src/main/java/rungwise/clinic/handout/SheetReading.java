package rungwise.clinic.handout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.OutsideText;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** What was typed for a sheet, all faults at once. */
record SheetReading(SheetDraft draft, SheetPress press) {

  /** The most characters of a line: it is to be read at a glance. */
  private static final int LONGEST = 120;

  /** What is asked, in order. */
  record Asked(SheetWriting.Said said, Keeping keeping) {}

  Reading<Asked> read(CourseFile file) {
    var faults = new ArrayList<Fault>();
    Optional<Language> language = Language.of(draft.language());
    Optional<Paper> paper = Paper.of(draft.paper());
    Optional<Keeping> keeping = Keeping.of(draft.keeping());
    missing(faults, language, SheetDraft.LANGUAGE, "Choose the language in which he reads.");
    missing(faults, paper, SheetDraft.PAPER, "Choose the paper that is in the printer.");
    missing(
        faults,
        keeping,
        SheetDraft.KEEPING,
        "Choose how his vial is kept, as its pharmacy or its label says.");
    Optional<String> clinic = number(faults, SheetDraft.CLINIC_NUMBER, draft.clinicNumber());
    Optional<String> after = number(faults, SheetDraft.AFTER_HOURS, draft.afterHoursNumber());
    Optional<String> hospital = line(faults, SheetDraft.HOSPITAL, "The hospital", draft.hospital());
    Optional<String> transport =
        line(faults, SheetDraft.TRANSPORT, "How he gets there", draft.transport());
    unprintable("His name", file.patient().fullName()).map(Fault::ofForm).ifPresent(faults::add);
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return Reading.of(
        new Asked(
            new SheetWriting.Said(
                language.orElseThrow(),
                paper.orElseThrow(),
                clinic.orElseThrow(),
                after.orElseThrow(),
                hospital.orElseThrow(),
                transport.orElseThrow()),
            keeping.orElseThrow()));
  }

  private static void missing(List<Fault> faults, Optional<?> chosen, String field, String text) {
    if (chosen.isEmpty()) {
      faults.add(new Fault(field, text));
    }
  }

  private Optional<String> number(List<Fault> faults, String field, String typed) {
    return take(faults, field, "The number", Telephone.read(typed));
  }

  private Optional<String> line(List<Fault> faults, String field, String what, String typed) {
    return take(faults, field, what, OutsideText.line(what, typed, LONGEST));
  }

  private Optional<String> take(
      List<Fault> faults, String field, String what, Reading<String> read) {
    faults.addAll(read.at(field).placed());
    Optional<String> found = read.found();
    found
        .flatMap(text -> unprintable(what, text))
        .ifPresent(words -> faults.add(new Fault(field, words)));
    return found;
  }

  private Optional<String> unprintable(String what, String text) {
    String signs = press.notPrintable(text);
    return signs.isEmpty()
        ? Optional.empty()
        : Optional.of(
            what
                + " holds what the sheet's letters do not have: "
                + signs
                + ". Write it in Latin letters, without pictures.");
  }
}
