// The response model with the requirement of each patient as a latent variable, as one would
// write it without marginalising. Rows of each kind are sorted out by fit_stan.R.
data {
  int<lower=1> patients;
  int<lower=1> groups;
  int<lower=1, upper=groups> group[patients];
  int<lower=1> reports;
  int<lower=1, upper=patients> patient[reports];
  vector[reports] x;
  int<lower=1, upper=4> grade[reports];
  int<lower=0> exacts;
  int<lower=1, upper=reports> exact[exacts];
  vector[exacts] log_minutes;
  int<lower=0> rights;
  int<lower=1, upper=reports> right[rights];
  vector[rights] log_seen;
  int<lower=0> intervals;
  int<lower=1, upper=reports> interval[intervals];
  vector[intervals] log_lower;
  vector[intervals] log_upper;
  int<lower=0> lefts;            // intervals that begin at 0
  int<lower=1, upper=reports> left[lefts];
  vector[lefts] log_before;
}
parameters {
  real mu;
  vector[groups - 1] gamma;
  real log_omega;
  real log_beta;
  real log_minus_c2;
  real log_c4;
  real d0;
  real log_d1;
  real log_tau;
  vector[patients] z;
}
transformed parameters {
  real omega = exp(log_omega);
  real beta = exp(log_beta);
  real c2 = -exp(log_minus_c2);
  real c4 = exp(log_c4);
  real d1 = exp(log_d1);
  real tau = exp(log_tau);
}
model {
  vector[reports] above;
  vector[3] cuts = [c2, 0, c4]';
  {
    vector[patients] eta = mu + append_row(0, gamma)[group] + omega * z;
    above = x - eta[patient];
  }
  z ~ std_normal();
  mu ~ normal(0, 2);
  gamma ~ normal(0, 1);
  log_omega ~ normal(log(0.7), 0.7);
  log_beta ~ normal(log(2), 0.7);
  log_minus_c2 ~ normal(log(2), 0.7);
  log_c4 ~ normal(log(2), 0.7);
  d0 ~ normal(log(40), 1);
  log_d1 ~ normal(log(0.5), 1);
  log_tau ~ normal(log(0.5), 0.7);
  grade ~ ordered_logistic(beta * above, cuts);
  log_minutes ~ normal(d0 + d1 * above[exact], tau);
  target += normal_lccdf(log_seen | d0 + d1 * above[right], tau);
  target += normal_lcdf(log_before | d0 + d1 * above[left], tau);
  {
    vector[intervals] middle = d0 + d1 * above[interval];
    for (k in 1:intervals) {
      // On the side of the middle where no probability is near 1.
      if (log_lower[k] + log_upper[k] > 2 * middle[k])
        target += log_diff_exp(normal_lccdf(log_lower[k] | middle[k], tau),
                               normal_lccdf(log_upper[k] | middle[k], tau));
      else
        target += log_diff_exp(normal_lcdf(log_upper[k] | middle[k], tau),
                               normal_lcdf(log_lower[k] | middle[k], tau));
    }
  }
}
