# Weights of importance sampling smoothed by the package loo: their shapes and some of the weights.
# The logarithms of the ratios are those of draws at given quantiles of a logistic curve, weighed for
# a curve that is moved and wider by a factor: the larger it is, the heavier the tail. No seed.
suppressPackageStartupMessages(library(loo))
cat("# pareto.R, no seed -", R.version.string, "- loo", as.character(packageVersion("loo")), "\n")
for (factor in c(0.8, 1.5, 3)) {
  for (count in c(100, 1000)) {
    z <- qlogis((seq_len(count) - 0.5) / count)
    ratios <- dlogis(z, location = 0.3, scale = factor, log = TRUE) - dlogis(z, log = TRUE)
    smooth <- suppressWarnings(psis(ratios, r_eff = 1))
    weights <- weights(smooth, log = FALSE)
    cat(factor, count, format(pareto_k_values(smooth), digits = 15),
        format(weights[c(1, 2, 5, count %/% 2)], digits = 15), "\n")
  }
}
