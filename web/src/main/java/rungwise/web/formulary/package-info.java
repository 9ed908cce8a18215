/**
 * The preparations and the syringes that the clinic keeps.
 *
 * <p>In: forms. Out: lists and forms, with every fault at once. Must not know: how a preparation is
 * checked.
 */
@NullMarked
package rungwise.web.formulary;

import org.jspecify.annotations.NullMarked;
