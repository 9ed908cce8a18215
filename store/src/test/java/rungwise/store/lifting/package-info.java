/** What stops a course and what lifts it, on SQLite. */
@NullMarked
package rungwise.store.lifting;

import org.jspecify.annotations.NullMarked;
