/**
 * The files of this repository, as the house rules read them.
 *
 * <p>In: the folder of the repository. Out: text files, parsed Java sources, maxima. Must not know:
 * the rules.
 */
@NullMarked
package rungwise.checks.house;

import org.jspecify.annotations.NullMarked;
