# The offset that a squad's settled logs have in common, and the spread of paddlers around it, by sampling.
#   Rscript posterior/squad.R       (from tests/reference)
suppressMessages({library(rjags); library(jsonlite)})
set.seed(20260412)
squads <- list(eight = list(offset = round(rnorm(8, -0.75, 0.5), 3), sd = rep(0.3, 8)), two = list(offset = c(-0.6, -0.9), sd = c(0.25, 0.4)),
               torn = list(offset = c(-1.9, 1.8, -1.6, 2.1, 0.1), sd = c(0.2, 0.3, 0.25, 0.3, 0.2)), many = list(offset = round(rnorm(30, 0.4, 0.35), 3), sd = round(runif(30, 0.15, 0.45), 3)))
text <- "model { for (i in 1:n) { y[i] ~ dnorm(own[i], pow(s[i], -2)); own[i] ~ dnorm(mu, pow(tau, -2)) }
  mu ~ dnorm(0, pow(0.6 * 0.8, -2)); ln_tau ~ dnorm(log(0.8 * 0.8) - 0.35 * 0.35, pow(0.35, -2)); tau <- exp(ln_tau); tau2 <- tau * tau }"
results <- lapply(names(squads), function(name) {
  squad <- squads[[name]]
  model <- jags.model(textConnection(text), list(n = length(squad$offset), y = squad$offset, s = squad$sd), lapply(1:4, function(k) list(.RNG.name = "base::Mersenne-Twister", .RNG.seed = 400 + k)), n.chains = 4, quiet = TRUE)
  update(model, 5000, progress.bar = "none")
  draws <- as.matrix(coda.samples(model, c("mu", "tau2", "ln_tau"), n.iter = 100000, thin = 5, progress.bar = "none"))
  list(squad = name, offset = squad$offset, sd = squad$sd, mu = mean(draws[, "mu"]), mu_sd = sd(draws[, "mu"]), tau2 = mean(draws[, "tau2"]), ln_tau = mean(draws[, "ln_tau"]))
})
write_json(list(jags = as.character(jags.version()), squads = results), "posterior/squad.json", digits = NA, auto_unbox = TRUE, pretty = TRUE)
