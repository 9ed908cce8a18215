/**
 * Sheets for home: making them, the words that they say, and the page by which anybody who holds
 * one learns whether it is current.
 *
 * <p>In: forms, codes. Out: pages and documents. Must not know: how a document is made.
 */
@NullMarked
package rungwise.web.handout;

import org.jspecify.annotations.NullMarked;
