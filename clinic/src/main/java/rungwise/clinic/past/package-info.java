/**
 * Injections from before this record began, brought in from a history file.
 *
 * <p>In: what a file says of each patient. Out: histories that courses of the same record number
 * read, until they are withdrawn. Must not know: how a file is written, SQL.
 */
@NullMarked
package rungwise.clinic.past;

import org.jspecify.annotations.NullMarked;
