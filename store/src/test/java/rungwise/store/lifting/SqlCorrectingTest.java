package rungwise.store.lifting;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.Patient;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.start.Correcting;
import rungwise.clinic.start.CorrectingContract;
import rungwise.clinic.start.ManDraft;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.quantities.Fault;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.OpenStores;

final class SqlCorrectingTest extends CorrectingContract {

  private static final String IMPORT = "00000000-0000-4000-8000-000000000001";

  @TempDir Path folder;
  @TempDir Path another;
  @AutoClose private final OpenStores stores = new OpenStores();

  @Override
  protected CoursePorts open() {
    return stores.open(folder);
  }

  private static ManDraft named(String name, String number) {
    return new ManDraft(
        name, "1961-04-30", number, "vasculogenic", /* namesakeConfirmed= */ false, "as shown");
  }

  private static PastInjection longErection() {
    return new PastInjection(
        2,
        1,
        Volume.ofMicrolitres(100),
        1.0,
        Optional.of(1.0),
        Grade.FULLY_FIRM,
        new SoftAfter.Exactly(TimeSpan.ofMinutes(300)),
        Optional.empty());
  }

  @Test
  void a_number_under_which_a_history_stands_stays() {
    var world = new TitrationWorld(stores.open(another), new LabelReader());
    CourseId course = world.open();
    var correcting = new Correcting(world.ports());
    Patient now = world.file(course).patient();
    var history = new PastHistory(now.recordNumber(), "unknown", List.of(longErection()));
    world
        .stored()
        .transactions()
        .inTransaction(
            () -> {
              world.ports().past().append(IMPORT, "history.csv", history, world.now());
              return true;
            });

    long basis = world.file(course).basis();
    assertThat(
            correcting
                .correct(Staff.PRESCRIBER, course, basis, named(now.fullName(), "MR-77"))
                .placed())
        .extracting(Fault::field)
        .containsExactly(ManDraft.RECORD_NUMBER);
    correcting
        .correct(Staff.PRESCRIBER, course, basis, named("Ola Sample", now.recordNumber()))
        .orThrow();
    assertThat(world.blocks(course)).contains(GuardRule.PAST_LONG);
  }
}
