package rungwise.clinic.formulary;

import java.util.function.Supplier;
import rungwise.clinic.Transactions;

final class InMemoryFormularyTest extends FormularyContract {

  private final InMemoryFormulary formulary = new InMemoryFormulary();

  @Override
  protected Preparations preparations() {
    return formulary;
  }

  @Override
  protected Syringes syringes() {
    return formulary;
  }

  @Override
  protected Transactions transactions() {
    return new Transactions() {
      @Override
      public <T> T inTransaction(Supplier<T> work) {
        return work.get();
      }
    };
  }
}
