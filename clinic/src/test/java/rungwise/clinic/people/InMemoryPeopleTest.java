package rungwise.clinic.people;

import rungwise.clinic.Transactions;

final class InMemoryPeopleTest extends AccountsContract {

  private final InMemoryPeople people = new InMemoryPeople();

  @Override
  protected Accounts accounts() {
    return people;
  }

  @Override
  protected Credentials credentials() {
    return people;
  }

  @Override
  protected Transactions transactions() {
    return people;
  }
}
