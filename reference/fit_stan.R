# The full posterior of the response model by Stan's NUTS on the latent-variable program fit.stan.
#
#     Rscript fit_stan.R SET SEED ITERATIONS       writes fit_stan_SET.txt
#
# Four chains, one after the other on one core, as many draws kept as ITERATIONS after 1000 to warm
# up. The seconds are processor time of the chains with their warm-up, without compiling. Lines:
#     SET NAME mean sd mcse_mean mcse_sd ess rhat        (natural scale; bulk ESS, rank R-hat)
#     SET seconds value
#     SET worst_ess_per_second value
suppressMessages(library(rstan))
given <- commandArgs(trailingOnly = TRUE)
name <- given[1]
seed <- as.integer(given[2])
iterations <- as.integer(given[3])
warmup <- 1000

rows <- read.csv(gzfile(file.path("fit", paste0(name, ".csv.gz"))))
rows$grade <- pmax(rows$grade, 1)
rows$number <- as.integer(factor(rows$patient, levels = unique(rows$patient)))
men <- rows[!duplicated(rows$patient), ]
reference <- names(which.max(table(men$group)))
words <- c(reference, setdiff(sort(unique(men$group)), reference))
status <- ifelse(rows$grade >= 3, rows$duration_status, "none")
exact <- which(status == "exact")
right <- which(status == "right" & rows$duration_min > 0)
interval <- which(status == "interval" & rows$duration_min > 0)
left <- which(status == "interval" & rows$duration_min == 0)
data <- list(
  patients = nrow(men), groups = length(words), group = match(men$group, words),
  reports = nrow(rows), patient = rows$number,
  x = log(rows$volume_ml * rows$potency * rows$strength / 0.1), grade = rows$grade,
  exacts = length(exact), exact = exact, log_minutes = log(rows$duration_min[exact]),
  rights = length(right), right = right, log_seen = log(rows$duration_min[right]),
  intervals = length(interval), interval = interval,
  log_lower = log(rows$duration_min[interval]), log_upper = log(rows$duration_upper_min[interval]),
  lefts = length(left), left = left, log_before = log(rows$duration_upper_min[left]))

# Debian's BH holds no headers: they are those of libboost-dev.
rstan_options(boost_lib = "/usr/include")
model <- stan_model("fit.stan")
# The density of T is that of ln T less ln T: it does not move the posterior.
fit <- sampling(model, data = data, chains = 4, iter = warmup + iterations, warmup = warmup,
                seed = seed, cores = 1, refresh = 0,
                pars = "z", include = FALSE)

seconds <- sum(get_elapsed_time(fit))
draws <- as.array(fit)
inside <- asNamespace("rstan")
sink(paste0("fit_stan_", name, ".txt"))
say <- function(...) cat(paste(...), "\n", sep = "")
say("# fit_stan.R", name, "seed", seed, "draws 4 x", iterations, "after", warmup, "-",
    R.version.string, "- rstan", as.character(packageVersion("rstan")), "- Stan", stan_version())
say("#", name, "reference", reference, "patients", nrow(men), "injections", nrow(rows),
    "divergent", get_num_divergent(fit))
own <- c("mu", if (length(words) > 1) paste0("gamma[", seq_len(length(words) - 1), "]"), "omega",
         "beta", "c2", "c4", "d0", "d1", "tau")
shown <- c("mu", if (length(words) > 1) paste0("gamma.", words[-1]), "omega", "beta", "c2", "c4",
           "d0", "d1", "tau")
worst <- Inf
for (k in seq_along(own)) {
  one <- draws[, , own[k]]
  ess <- inside$ess_bulk(one)
  worst <- min(worst, ess)
  told <- c(mean(one), sd(one), inside$mcse_mean(one), inside$mcse_sd(one), ess, inside$Rhat(one))
  say(name, shown[k], paste(sprintf("%.10g", told), collapse = " "))
}
say(name, "seconds", sprintf("%.6g", seconds))
say(name, "worst_ess_per_second", sprintf("%.6g", worst / seconds))
