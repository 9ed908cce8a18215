/**
 * The pages people see: forms in, one use case called, HTML out.
 *
 * <p>In: requests of a browser. Out: pages and redirects. Each feature has its own package below
 * this one. Knows no SQL, no file format, and computes no amount.
 */
@NullMarked
package rungwise.web;

import org.jspecify.annotations.NullMarked;
