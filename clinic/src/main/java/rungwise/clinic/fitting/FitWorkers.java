package rungwise.clinic.fitting;

import rungwise.dosing.fit.Workers;

/** Port: threads that work on one fit. */
public interface FitWorkers extends Workers, AutoCloseable {

  @Override
  void close();
}
