package rungwise.clinic.sheet;

import rungwise.clinic.day.DayLine;

/**
 * A course in the day's list, in words that stay right until something changes.
 *
 * @param day what it needs from somebody, and since when
 * @param advice what is proposed, with volume and mark
 * @param because the deciding reason in one line; empty while an erection is not known to be over,
 *     of which what there is to say changes with every minute
 * @param now the answer to "may he inject now?"
 */
public record DayView(DayLine day, String advice, String because, NowView now) {}
