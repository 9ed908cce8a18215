package rungwise.web.clock;

import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * Asks for date and time by another clock.
 *
 * @param now what the server says
 */
public record ClockPage(String now, String notice, Field date, Field time, Faults faults) {}
