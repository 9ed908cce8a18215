package rungwise.clinic.factor;

import rungwise.clinic.Transactions;
import rungwise.clinic.people.InMemoryPeople;

class InMemoryFactorsTest extends FactorsContract {

  private final InMemoryFactors factors = new InMemoryFactors();
  private final InMemoryPeople people = new InMemoryPeople();

  @Override
  protected Factors factors() {
    return factors;
  }

  @Override
  protected Transactions transactions() {
    return people;
  }
}
