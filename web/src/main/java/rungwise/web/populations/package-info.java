/**
 * Pages for the populations of the response model.
 *
 * <p>In: requests of people who may see or sign them. Out: what each rests on, for which
 * preparations it is, and the form that signs it. Must not know: how the model works.
 */
@NullMarked
package rungwise.web.populations;

import org.jspecify.annotations.NullMarked;
