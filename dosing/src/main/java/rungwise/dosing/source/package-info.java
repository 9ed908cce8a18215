/**
 * Where every clinical number comes from.
 *
 * <p>In: a citation, a place in it, how it was seen. Out: sourced values. Must not know: what the
 * numbers are used for.
 */
@NullMarked
package rungwise.dosing.source;

import org.jspecify.annotations.NullMarked;
