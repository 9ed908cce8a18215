@NullMarked
package rungwise.app;

import org.jspecify.annotations.NullMarked;
