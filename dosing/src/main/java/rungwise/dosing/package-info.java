@NullMarked
package rungwise.dosing;

import org.jspecify.annotations.NullMarked;
