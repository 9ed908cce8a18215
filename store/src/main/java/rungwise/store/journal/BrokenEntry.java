package rungwise.store.journal;

/**
 * Where the journal is no longer as it was written.
 *
 * @param seq the number of the entry that is missing or is not as it was sealed
 * @param words what is wrong, for an administrator
 */
public record BrokenEntry(long seq, String words) {}
