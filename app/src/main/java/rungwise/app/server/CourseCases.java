package rungwise.app.server;

import rungwise.clinic.start.Starting;
import rungwise.clinic.titration.Titration;

/** The use cases about courses, which share their ports. */
record CourseCases(Starting starting, Titration titration) {}
