/**
 * Documents that make promises about the code.
 *
 * <p>In: the documents and the sources. Out: a failure for each promise that is not kept. Must not
 * know: how the code keeps it.
 */
@NullMarked
package rungwise.checks.docs;

import org.jspecify.annotations.NullMarked;
