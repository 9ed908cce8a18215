/** Every form of a running server: what it refuses, keeps and never writes. */
@NullMarked
package rungwise.app.forms;

import org.jspecify.annotations.NullMarked;
