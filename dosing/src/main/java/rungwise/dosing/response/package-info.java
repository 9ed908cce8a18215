/**
 * The dose-response model of one man: what his injections say of his requirement, and what it makes
 * of each volume.
 *
 * <p>In: population parameters and a history. Out: a posterior and probabilities. Must not know:
 * guards, rules, what is done with a forecast.
 */
@NullMarked
package rungwise.dosing.response;

import org.jspecify.annotations.NullMarked;
