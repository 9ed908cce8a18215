package rungwise.web.page;

/**
 * How a page that is left open shows what changes.
 *
 * @param stamp another one once anything may have changed
 * @param script address of the script that looks
 */
public record Refreshing(String stamp, String script) {}
