/**
 * What several pages ask about one injection, as parts of their forms: what was injected where, and
 * the tablets that speak against it.
 *
 * <p>In: what was typed, with its faults. Out: fields and choices. Must not know: which page shows
 * them.
 */
@NullMarked
package rungwise.web.injection;

import org.jspecify.annotations.NullMarked;
