/** Screening and examination, on SQLite. */
@NullMarked
package rungwise.store.screening;

import org.jspecify.annotations.NullMarked;
