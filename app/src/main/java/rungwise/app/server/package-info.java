/**
 * A running server: its settings, the opened clinic behind it, and the wiring in between.
 *
 * <p>In: settings and a data folder. Out: a server that answers until it is closed. Must not know:
 * what any page shows. The demonstration's invented clinic is made here too.
 */
@NullMarked
package rungwise.app.server;

import org.jspecify.annotations.NullMarked;
