/**
 * What is said to a man, in his language, for pages and documents alike.
 *
 * <p>In: a key, a language, finished words for its gaps. Out: a text. Must not know: courses,
 * pages, what any text is about.
 */
@NullMarked
package rungwise.clinic.words;

import org.jspecify.annotations.NullMarked;
