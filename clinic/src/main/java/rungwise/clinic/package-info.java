/**
 * What the clinic does, feature by feature, and what all features share.
 *
 * <p>In: what a signed-in person asks for. Out: records, decisions, refusals with every fault. Must
 * not know: SQL, HTTP, files, frameworks.
 */
@NullMarked
package rungwise.clinic;

import org.jspecify.annotations.NullMarked;
