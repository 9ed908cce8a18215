/**
 * The sheet that a man takes home: what it says, who may make it, and whether it is current.
 *
 * <p>In: courses as they stand. Out: entries, and what a document or a page shows. Must not know:
 * how a document is made, pages.
 */
@NullMarked
package rungwise.clinic.handout;

import org.jspecify.annotations.NullMarked;
