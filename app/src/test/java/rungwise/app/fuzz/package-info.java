/**
 * Whatever comes from outside is read with a value or with faults, at once, and in no other way: a
 * tool that watches which code runs looks for what breaks that.
 */
@NullMarked
package rungwise.app.fuzz;

import org.jspecify.annotations.NullMarked;
