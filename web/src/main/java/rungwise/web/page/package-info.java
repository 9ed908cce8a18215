/**
 * What every page is made of: the frame around it, fields, faults, verdicts and doses as shown.
 *
 * <p>In: view records of one page and its template's name. Out: HTML bytes. Must not know any
 * feature, use case or rule about who may do what.
 */
@NullMarked
package rungwise.web.page;

import org.jspecify.annotations.NullMarked;
