/**
 * Pages for what went wrong: what happened, whether anything was saved, the way on.
 *
 * <p>In: a status or a failure. Out: a page; for a failure also a log entry under the same number.
 * Must not know: any feature. Never shows or logs what a person typed.
 */
@NullMarked
package rungwise.web.fault;

import org.jspecify.annotations.NullMarked;
