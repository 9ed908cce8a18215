/** How a server starts, or does not. */
@NullMarked
package rungwise.app.start;

import org.jspecify.annotations.NullMarked;
