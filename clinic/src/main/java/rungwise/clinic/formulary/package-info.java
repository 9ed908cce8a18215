/**
 * What the clinic has in its cupboard: preparations, each version of them, and syringes.
 *
 * <p>In: what a prescriber or the programme lead typed. Out: records to which plans and orders
 * point, or every fault. Must not know: how a dose is chosen.
 */
@NullMarked
package rungwise.clinic.formulary;

import org.jspecify.annotations.NullMarked;
