# Invented logs with heart rate, and their posterior by sampling: long chains in JAGS, fixed seeds.
#   Rscript posterior/heart.R [iterations]       (from tests/reference)
suppressMessages({library(rjags); library(jsonlite)})
iterations <- as.integer(c(commandArgs(TRUE), "60000")[1])
load.module("glm", quiet = TRUE)
levels <- c(0.05, 0.25, 0.5, 0.75, 0.95)
set.seed(20260411)

# Straying effort told as the number asked for; a lean on length; the same with every second outing blind; a third of the readings missing.
kinds <- list(straying = list(outings = 5, omega = 1, lean = 0, blind = FALSE, missing = 0, told = FALSE), leaning = list(outings = 5, omega = 0.5, lean = 0.25, blind = FALSE, missing = 0, told = FALSE),
              hidden = list(outings = 6, omega = 0.5, lean = 0.25, blind = TRUE, missing = 0, told = FALSE), missing = list(outings = 5, omega = 1, lean = 0, blind = FALSE, missing = 1 / 3, told = TRUE),
              first = list(outings = 1, omega = 0.7, lean = 0, blind = FALSE, missing = 0, told = FALSE))
simulate <- function(name) {
  kind <- kinds[[name]]; best <- 50.6
  rows <- do.call(rbind, lapply(seq_len(kind$outings), function(j) {
    away <- 1.25 * c(-1, 1, 1, -1) * (if (j %% 2 == 1) 1 else -1); length <- 50 + away
    blind <- kind$blind && j %% 2 == 0
    effort <- rnorm(4, 0, kind$omega) + (if (blind) 0 else kind$lean) * away
    percent <- rnorm(1, 0, 2.5) - 0.3 * (0:3) + 3 * effort - 0.45 * (length - best)^2 + rnorm(4)
    rate <- round(145 + rnorm(1, 0, 5) + 9 * effort + 1.5 * (0:3) + rnorm(4, 0, 3))
    data.frame(paddler = "Ilse Maro", date = as.character(as.Date("2026-04-01") + 5 * j), outing = "", piece = 1:4, hull = "OC1", paddle = "Long river", length_in = length, distance_m = 1000,
               time_s = round(1000 / (3 * exp(percent / 100)), 1), effort = if (kind$told) 6 + round(effort) / 2 else 6, heart_rate = ifelse(runif(4) < kind$missing, "", as.character(rate)), blind = if (blind) "yes" else "")
  }))
  write.csv(rows, file.path("logbooks", paste0("heart-", name, ".csv")), row.names = FALSE, quote = FALSE)
}

sample_posterior <- function(name, noise) {
  log <- read.csv(file.path("logbooks", paste0("heart-", name, ".csv")), colClasses = c(blind = "character"))
  outing <- match(log$date, unique(log$date)); within <- function(column) column - ave(column, outing)
  y <- 100 * log(log$distance_m / log$time_s); o <- within(log$piece); weeks <- as.numeric(as.Date(log$date) - as.Date(log$date[1])) / 7
  data <- list(pieces = nrow(log), outings = max(outing), outing = outing, y = y - mean(y), x = log$length_in - 50, within = within(log$length_in), seen = as.numeric(log$blind != "yes"),
               told = within(log$effort), rate = log$heart_rate, o = log$piece - mean(log$piece), o2 = within(o^2), week = weeks - mean(weeks), t = mean(log(log$time_s / 300)),
               known = (100 * 0.5 / log$time_s)^2 + (100 * 2 / log$distance_m)^2, nu = if (noise == "t4") 4 else 1e7)
  inits <- lapply(1:4, function(k) list(.RNG.name = "base::Mersenne-Twister", .RNG.seed = 300 + k))
  model <- jags.model("posterior/heart.jags", data, inits, n.chains = 4, n.adapt = 5000, quiet = TRUE)
  update(model, 10000, progress.bar = "none")
  samples <- coda.samples(model, c("best", "omega"), n.iter = iterations, thin = 10, progress.bar = "none")
  draws <- as.matrix(samples)
  message(name, " ", noise, ": largest shrink factor ", format(max(coda::gelman.diag(samples, multivariate = FALSE)$psrf[, 1]), digits = 5))
  batch <- function(of) { b <- sapply(split(draws[, "best"], rep(1:40, each = nrow(draws) / 40)), of); sd(b) / sqrt(40) }
  best <- draws[, "best"]
  list(logbook = paste0("heart-", name), noise = noise, mean = mean(best), mean_mcse = batch(mean), sd = sd(best), sd_mcse = batch(sd), quantiles = unname(quantile(best, levels)), omega = mean(draws[, "omega"]))
}

invisible(lapply(names(kinds), simulate))
runs <- expand.grid(name = names(kinds), noise = c("normal", "t4"), stringsAsFactors = FALSE)
results <- lapply(seq_len(nrow(runs)), function(k) sample_posterior(runs$name[k], runs$noise[k]))
write_json(list(levels = levels, iterations = iterations, jags = as.character(jags.version()), runs = results), "posterior/heart.json", digits = NA, auto_unbox = TRUE, pretty = TRUE)
