@NullMarked
package rungwise.clinic;

import org.jspecify.annotations.NullMarked;
