package rungwise.store.course;

/** How well it is known when an injection's effect was over. */
enum SoftKind {
  EXACTLY,
  AT_LEAST,
  BETWEEN,
  NOT_KNOWN
}
