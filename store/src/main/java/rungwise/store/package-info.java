@NullMarked
package rungwise.store;

import org.jspecify.annotations.NullMarked;
