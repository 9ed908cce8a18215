@NullMarked
package rungwise.drawing;

import org.jspecify.annotations.NullMarked;
