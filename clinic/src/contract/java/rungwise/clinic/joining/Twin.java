package rungwise.clinic.joining;

import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.start.CourseDraft;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.known.SamplePreparations;

/** A man who has two courses. */
final class Twin {

  private Twin() {}

  /** Another course of the same man, under a number that is spelled otherwise. */
  static CourseId of(TitrationWorld world, CourseId first) {
    CourseFile file = world.file(first);
    CourseDraft form =
        world.form(file.patient().fullName(), "OTHER-" + file.basis(), "vasculogenic", "u100-1");
    CourseId id =
        world
            .starting()
            .open(
                Staff.EDUCATOR,
                new CourseDraft(
                    form.fullName(),
                    form.birthDate(),
                    form.recordNumber(),
                    form.group(),
                    form.preparation(),
                    form.barrel(),
                    form.protocol(),
                    /* namesakeConfirmed= */ true))
            .orThrow();
    world.prepare(id, SamplePreparations.ALPROSTADIL_20);
    return id;
  }
}
