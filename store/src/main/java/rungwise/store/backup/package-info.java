/**
 * Copies of a data folder: taken while it is in use, checked, and put back.
 *
 * <p>In: a folder, and where the copy goes. Out: the head of what was copied, or what is broken.
 * Must not know: what a record means.
 */
@NullMarked
package rungwise.store.backup;

import org.jspecify.annotations.NullMarked;
