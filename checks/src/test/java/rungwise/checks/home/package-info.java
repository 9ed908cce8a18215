/** What is looked at of a man himself: his name, and the sheet that he takes home. */
@NullMarked
package rungwise.checks.home;

import org.jspecify.annotations.NullMarked;
