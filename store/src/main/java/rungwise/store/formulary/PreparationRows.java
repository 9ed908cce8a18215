package rungwise.store.formulary;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.TableRecord;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.supply.InUseRule;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.schema.tables.records.PreparationIngredientRecord;
import rungwise.store.schema.tables.records.PreparationRecord;

/** A version of a preparation as rows, and rows as a version. */
final class PreparationRows {

  private static final String SOLUTION = "solution";
  private static final String POWDER = "powder";
  private static final String PREFILLED = "prefilled";
  private static final String CARTRIDGE = "cartridge";
  private static final String SINGLE_USE = "single_use";
  private static final String DAYS = "days";
  private static final String NOT_STATED = "not_stated";

  private PreparationRows() {}

  static TableRecord<?>[] of(ClinicPreparation version) {
    var rows = new ArrayList<TableRecord<?>>();
    rows.add(row(version));
    List<Ingredient> ingredients = version.preparation().ingredients();
    for (int line = 0; line < ingredients.size(); line++) {
      rows.add(row(ingredients.get(line), line));
    }
    return rows.toArray(TableRecord<?>[]::new);
  }

  private static PreparationRecord row(ClinicPreparation version) {
    Preparation preparation = version.preparation();
    var row = new PreparationRecord();
    row.setPreparationId(version.id().value());
    row.setReplaces(version.replaces().map(PreparationId::value).orElse(null));
    row.setName(preparation.name());
    put(preparation.form(), row);
    row.setCeilingMicrolitres(preparation.ceiling().microlitres());
    row.setPreservative(preparation.preservative().orElse(null));
    put(version.inUse(), row);
    return row;
  }

  private static void put(Form form, PreparationRecord row) {
    switch (form) {
      case Form.Solution solution -> row.setForm(SOLUTION);
      case Form.Powder powder -> {
        row.setForm(POWDER);
        row.setDiluentMicrolitres(powder.diluent().microlitres());
        row.setUsableMilliseconds(powder.usableFor().milliseconds());
      }
      case Form.Prefilled prefilled -> {
        row.setForm(PREFILLED);
        row.setFillMicrolitres(prefilled.fill().microlitres());
      }
      case Form.Cartridge cartridge -> {
        row.setForm(CARTRIDGE);
        row.setFillMicrolitres(cartridge.fill().microlitres());
      }
    }
  }

  private static void put(InUseRule rule, PreparationRecord row) {
    switch (rule) {
      case InUseRule.SingleUse once -> row.setInUse(SINGLE_USE);
      case InUseRule.NotStated unknown -> row.setInUse(NOT_STATED);
      case InUseRule.DaysAfterOpening limit -> {
        row.setInUse(DAYS);
        row.setInUseDays((short) limit.days());
      }
    }
  }

  private static PreparationIngredientRecord row(Ingredient ingredient, int line) {
    var row = new PreparationIngredientRecord();
    row.setLine((short) line);
    row.setComponent(ingredient.component().token());
    row.setPicogramsPerMicrolitre(ingredient.strength().picogramsPerMicrolitre());
    row.setLimitPicograms(ingredient.limit().map(Mass::picograms).orElse(null));
    return row;
  }

  static ClinicPreparation read(
      PreparationRecord row, List<PreparationIngredientRecord> ingredients) {
    var preparation =
        new Preparation(
            new PreparationId(row.getPreparationId()),
            row.getName(),
            form(row),
            ingredients.stream().map(PreparationRows::ingredient).toList(),
            new Volume(row.getCeilingMicrolitres()),
            Optional.ofNullable(row.getPreservative()));
    Optional<PreparationId> replaces =
        Optional.ofNullable(row.getReplaces()).map(PreparationId::new);
    return new ClinicPreparation(preparation, inUse(row), replaces);
  }

  private static Ingredient ingredient(PreparationIngredientRecord row) {
    return new Ingredient(
        Component.of(row.getComponent()).orElseThrow(),
        new Concentration(row.getPicogramsPerMicrolitre()),
        Optional.ofNullable(row.getLimitPicograms()).map(Mass::new));
  }

  private static Form form(PreparationRecord row) {
    return switch (row.getForm()) {
      case SOLUTION -> new Form.Solution();
      case POWDER ->
          new Form.Powder(
              volume(row.getDiluentMicrolitres()), new TimeSpan(row.getUsableMilliseconds()));
      case PREFILLED -> new Form.Prefilled(volume(row.getFillMicrolitres()));
      case CARTRIDGE -> new Form.Cartridge(volume(row.getFillMicrolitres()));
      default -> throw new IllegalStateException("bug: a form of " + row.getForm());
    };
  }

  private static InUseRule inUse(PreparationRecord row) {
    return switch (row.getInUse()) {
      case SINGLE_USE -> new InUseRule.SingleUse();
      case NOT_STATED -> new InUseRule.NotStated();
      case DAYS -> new InUseRule.DaysAfterOpening(row.getInUseDays());
      default -> throw new IllegalStateException("bug: a rule of " + row.getInUse());
    };
  }

  private static Volume volume(@Nullable Long microlitres) {
    if (microlitres == null) {
      throw new IllegalStateException("bug: a form without its volume");
    }
    return new Volume(microlitres);
  }
}
