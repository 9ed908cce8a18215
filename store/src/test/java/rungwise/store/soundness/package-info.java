/** Courses that are not as they were written. */
@NullMarked
package rungwise.store.soundness;

import org.jspecify.annotations.NullMarked;
