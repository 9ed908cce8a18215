/**
 * The protocols that the clinic has signed, and the samples that it may sign.
 *
 * <p>In: the shelf of protocols. Out: a page. Must not know: how a protocol is read.
 */
@NullMarked
package rungwise.web.protocols;

import org.jspecify.annotations.NullMarked;
