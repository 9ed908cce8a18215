package rungwise.clinic.people;

/** The fields of the forms about accounts, as a fault names them. */
public final class AccountFields {

  public static final String CODE = "code";
  public static final String FULL_NAME = "fullName";
  public static final String SIGN_IN_NAME = "signInName";

  /** A password that opens an account. */
  public static final String PASSWORD = "password";

  public static final String PRESENT_PASSWORD = "presentPassword";
  public static final String NEW_PASSWORD = "newPassword";
  public static final String ROLES = "roles";

  private AccountFields() {}
}
