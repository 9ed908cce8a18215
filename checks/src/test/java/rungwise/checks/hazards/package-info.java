/**
 * Controls against mix-ups that go through several parts of the product.
 *
 * <p>In: published compositions and known syringes. Out: a failure where a mix-up would pass. Must
 * not know: which page or document shows it.
 */
@NullMarked
package rungwise.checks.hazards;

import org.jspecify.annotations.NullMarked;
