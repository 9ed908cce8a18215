# The minutes alone, by a linear mixed model of ln T with a random intercept for each patient,
# fitted with R's package lme4 by maximum likelihood. No seed.
#
#     Rscript fit_lme4.R > fit_lme4.txt
#
# ln T = d0 + d1 (x - eta) + tau e with eta = mu + omega z is a line in x:
#     intercept = d0 - d1 mu      slope = d1      deviation of the intercepts = d1 omega
#     deviation of what is left = tau
# Every grade in the file is 3 or 4. Where beta is all but 0 a grade says nothing of eta, and the
# product's log-likelihood is that of lme4 plus a known number: ln P(grade 3) or ln P(grade 4) of
# each line, from c4 alone (1/2 - expit(-c4), and expit(-c4)).
#
# Lines: "durations logLik value" counts the density of T (that of ln T less the sum of ln T);
# then "durations NAME estimate se" for intercept, slope and the two deviations (no se).
suppressMessages(library(lme4))
say <- function(...) cat(paste(...), "\n", sep = "")
show <- function(...) do.call(say, lapply(list(...), function(v)
  if (is.numeric(v)) sprintf("%.15g", v) else v))

rows <- read.csv(gzfile("fit/durations.csv.gz"))
rows$x <- log(rows$volume_ml * rows$potency * rows$strength / 0.1)
rows$y <- log(rows$duration_min)
fit <- lmer(y ~ x + (1 | patient), data = rows, REML = FALSE,
            control = lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-12)))

say("# fit_lme4.R, no seed -", R.version.string, "- lme4", as.character(packageVersion("lme4")))
say("# durations patients", length(unique(rows$patient)), "injections", nrow(rows))
error <- sqrt(diag(as.matrix(vcov(fit))))
show("durations", "logLik", as.numeric(logLik(fit)) - sum(rows$y))
show("durations", "intercept", fixef(fit)[[1]], error[[1]])
show("durations", "slope", fixef(fit)[[2]], error[[2]])
show("durations", "intercept_deviation", as.data.frame(VarCorr(fit))$sdcor[1])
show("durations", "residual_deviation", sigma(fit))
