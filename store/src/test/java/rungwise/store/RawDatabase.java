package rungwise.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The database file as somebody with another program sees it: no keys, no guard but triggers. */
public final class RawDatabase implements AutoCloseable {

  private final Connection connection;

  private RawDatabase(Connection connection) {
    this.connection = connection;
  }

  public static RawDatabase in(Path folder) throws SQLException {
    var raw =
        new RawDatabase(
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("rungwise.db")));
    raw.run("pragma synchronous = off");
    return raw;
  }

  /** Takes away all that forbids changes. */
  public static RawDatabase withoutTriggers(Path folder) throws SQLException {
    RawDatabase raw = in(folder);
    raw.run("pragma ignore_check_constraints = on");
    for (Object name : raw.column("select name from sqlite_master where type = 'trigger'")) {
      raw.run("drop trigger " + name);
    }
    return raw;
  }

  public void run(String sql, @Nullable Object... values) throws SQLException {
    try (var statement = connection.prepareStatement(sql)) {
      for (int at = 0; at < values.length; at++) {
        statement.setObject(at + 1, values[at]);
      }
      statement.execute();
    }
  }

  /** The first column of a query's rows. */
  public List<@Nullable Object> column(String sql) throws SQLException {
    var found = new ArrayList<@Nullable Object>();
    try (var statement = connection.createStatement();
        var rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        found.add(rows.getObject(1));
      }
    }
    return found;
  }

  /** How a query would be answered, step by step. */
  public List<String> plan(String sql) throws SQLException {
    var steps = new ArrayList<String>();
    try (var statement = connection.createStatement();
        var rows = statement.executeQuery("explain query plan " + sql)) {
      while (rows.next()) {
        steps.add(rows.getString("detail"));
      }
    }
    return steps;
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}
