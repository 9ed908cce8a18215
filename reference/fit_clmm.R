# The grades alone, by a cumulative logit model with a random intercept for each patient, fitted
# with R's package ordinal (adaptive Gauss-Hermite quadrature, 40 points). No seed.
#
#     Rscript fit_clmm.R > fit_clmm.txt
#
# ordinal has P(Y <= k) = expit(theta_k - (b x + b_g + u)), u normal with deviation s. With
# P(Y >= k) = expit(beta (x - eta) - c_k), c_3 = 0 and eta = mu + gamma_g + omega z this is
#     beta = b          mu = theta_2|3 / b          gamma_g = -b_g / b          omega = s / b
#     c2 = theta_1|2 - theta_2|3                    c4 = theta_3|4 - theta_2|3
# and standard errors follow by the delta method. Lines: "grades NAME estimate se", and with
# "grades.clmm" the same fit in ordinal's own parameters.
suppressMessages(library(ordinal))
say <- function(...) cat(paste(...), "\n", sep = "")
show <- function(...) do.call(say, lapply(list(...), function(v)
  if (is.numeric(v)) sprintf("%.15g", v) else v))

rows <- read.csv(gzfile("fit/grades.csv.gz"))
rows$x <- log(rows$volume_ml * rows$potency * rows$strength / 0.1)
rows$y <- factor(pmax(rows$grade, 1), ordered = TRUE)
rows$patient <- factor(rows$patient)
men <- rows[!duplicated(rows$patient), ]
reference <- names(which.max(table(men$group)))
rows$group <- relevel(factor(rows$group), ref = reference)

fit <- clmm(y ~ x + group + (1 | patient), data = rows, link = "logit", nAGQ = 40, Hess = TRUE,
            control = clmm.control(method = "ucminf", gradTol = 1e-6, maxIter = 500, grtol = 1e-7))

say("# fit_clmm.R, no seed -", R.version.string, "- ordinal",
    as.character(packageVersion("ordinal")))
say("# grades reference", reference, "patients", nrow(men), "injections", nrow(rows),
    "largest derivative", max(abs(fit$gradient)))

# The parameters in the order of vcov: thresholds, b, b_g, and last the logarithm of s.
own <- c(fit$alpha, fit$beta, s = as.numeric(attr(VarCorr(fit)$patient, "stddev")))
covariance <- vcov(fit)
n <- length(own)
# ordinal searches log s: its last row and column are of that.
covariance[n, ] <- covariance[n, ] * own[n]
covariance[, n] <- covariance[, n] * own[n]
mapped <- function(p) {
  b <- p[4]
  c(mu = p[2] / b, setNames(-p[5:(n - 1)] / b, sub("^group", "gamma.", names(p)[5:(n - 1)])),
    omega = p[n] / b, beta = b, c2 = p[1] - p[2], c4 = p[3] - p[2])
}
estimate <- mapped(own)
names(estimate) <- sub("^(mu|omega|beta|c2|c4)\\..*", "\\1", names(estimate))
slope <- sapply(1:n, function(k) {
  h <- 1e-5
  move <- replace(numeric(n), k, h)
  (mapped(own + move) - mapped(own - move)) / (2 * h)
})
error <- sqrt(diag(slope %*% covariance %*% t(slope)))
show("grades", "logLik", as.numeric(logLik(fit)))
for (k in seq_along(estimate)) show("grades", names(estimate)[k], estimate[[k]], error[[k]])
for (k in 1:n) show("grades.clmm", names(own)[k], own[[k]], sqrt(covariance[k, k]))
