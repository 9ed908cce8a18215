@NullMarked
package rungwise.web;

import org.jspecify.annotations.NullMarked;
