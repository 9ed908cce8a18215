@NullMarked
package rungwise.files;

import org.jspecify.annotations.NullMarked;
