/**
 * Single bytes of a record's files are changed at random, and what is served then is compared with
 * what was written: nothing false is served without a word.
 */
@NullMarked
package rungwise.checks.bytes;

import org.jspecify.annotations.NullMarked;
