package rungwise.dosing.source;

/**
 * A value that carries its source.
 *
 * @param <T> the kind of value
 */
public record Sourced<T>(T value, Source source) {}
