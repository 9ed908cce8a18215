/**
 * Documents for home as PDF, and what they share with the pages: syringes as drawings, squares for
 * cameras.
 *
 * <p>In: a sheet as it was written down, and its dose. Out: bytes. Must not know: courses, where
 * anything is kept, pages, what time it is. Nothing is computed or decided here.
 */
@NullMarked
package rungwise.sheets;

import org.jspecify.annotations.NullMarked;
