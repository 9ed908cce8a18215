/** What a page shows at one look, measured on the screen and on paper. */
@NullMarked
package rungwise.checks.look;

import org.jspecify.annotations.NullMarked;
