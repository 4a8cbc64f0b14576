# The posterior of the sample logbooks by sampling: long chains in JAGS, fixed seeds, with the Monte Carlo standard error of
# every mean and quantile (by batches).
#   Rscript posterior/posterior.R [iterations]       (from tests/reference; some ten minutes)
suppressMessages({library(rjags); library(jsonlite)})
iterations <- as.integer(c(commandArgs(TRUE), "100000")[1])
load.module("glm", quiet = TRUE)
starts <- read_json("logbooks/start-lengths.json")
crew <- c(OC1 = 1, OC2 = 2); offset <- c(OC1 = 0, OC2 = -1)
levels <- c(0.05, 0.25, 0.5, 0.75, 0.95)

prepare <- function(name) {
  log <- read.csv(file.path("logbooks", paste0(name, ".csv")))
  hulls <- unique(log$hull); hull <- match(log$hull, hulls); outing <- with(log, match(paste(date, outing), unique(paste(date, outing))))
  days <- as.numeric(as.Date(log$date) - as.Date(log$date[1]))
  columns <- list(order = log$piece - 1, effort = log$effort, distance = log(log$distance_m / 1000), trend = days / 7)
  prior <- list(order = c(-0.3, 0.5), effort = c(3, 1.5), distance = c(-6, 3), trend = c(0, 0.3))
  varies <- names(Filter(function(column) diff(range(column)) > 1e-9, columns))
  y <- 100 * log(log$distance_m / log$time_s)
  # The duration of a piece is the mean over the hull's pieces that are about as far: within 15 % of the next shorter one.
  far <- ave(log$distance_m, hull, FUN = function(metres) {
    sorted <- sort(unique(metres))
    cumsum(c(1, sorted[-1] >= 1.15 * sorted[-length(sorted)]))[match(metres, sorted)]
  })
  t <- ave(log(log$time_s / 300), hull, far)
  list(hulls = hulls, data = list(
    pieces = nrow(log), outings = max(outing), hulls = length(hulls), columns = length(varies),
    y = y - ave(y, hull), x = log$length_in - starts[[name]] - offset[log$hull], t = t, hull = hull, outing = outing, outing_hull = array(hull[match(unique(outing), outing)]),
    z = sapply(columns[varies], function(column) column - mean(column)),
    beta_mean = sapply(prior[varies], `[`, 1), beta_spread = sapply(prior[varies], `[`, 2),
    share = array(1 / crew[hulls]), hull_spread = 0.35, start_spread = 0.8, outlier_share = 0.2, outlier_factor = 2.5, untold = as.numeric(all(log$effort == ave(log$effort, outing))),
    # Two presses of a watch (0.5 s) and 2 m of distance, in percent.
    known = (100 * 0.5 / log$time_s)^2 + (100 * 2 / log$distance_m)^2, goal = median(t)))
}

batches <- function(draws, statistic, count = 40) {
  # Each chain is cut into batches; they are far longer than the chains remember.
  size <- length(draws) / count
  sd(sapply(seq_len(count), function(k) statistic(draws[((k - 1) * size + 1):(k * size)]))) / sqrt(count)
}

describe <- function(draws) list(
  mean = mean(draws), mean_mcse = batches(draws, mean), sd = sd(draws), sd_mcse = batches(draws, sd),
  quantiles = unname(quantile(draws, levels)), quantiles_mcse = sapply(levels, function(level) batches(draws, function(some) quantile(some, level))))

sample_posterior <- function(name, noise) {
  prepared <- prepare(name)
  prepared$data$nu <- if (noise == "t4") 4 else 1e7
  inits <- lapply(1:4, function(k) list(.RNG.name = "base::Mersenne-Twister", .RNG.seed = 100 + k, ln_own = log(c(0.8, 1, 1.2, 1.5)[k]), common = c(-0.5, 0, 0.3, 0.6)[k]))
  model <- jags.model("posterior/model.jags", prepared$data, inits, n.chains = 4, n.adapt = 5000, quiet = TRUE)
  update(model, 5000, progress.bar = "none")
  names_of <- c("best", "ln_c", "skew", "kappa", "ln_tau", "ln_sigma")
  samples <- coda.samples(model, names_of, n.iter = iterations, thin = 10, progress.bar = "none")
  draws <- as.matrix(samples)
  if (length(prepared$hulls) == 1) colnames(draws)[colnames(draws) == "best"] <- "best[1]"
  message(name, " ", noise, ": largest shrink factor ", format(max(coda::gelman.diag(samples, multivariate = FALSE)$psrf[, 1]), digits = 5))
  list(logbook = name, noise = noise, start = starts[[name]], goal_ln_duration = prepared$data$goal, hulls = I(prepared$hulls),
       best = lapply(seq_along(prepared$hulls), function(h) describe(draws[, sprintf("best[%d]", h)])),
       ln_c = describe(draws[, "ln_c"]), skew = describe(draws[, "skew"]), kappa = describe(draws[, "kappa"]), ln_tau = describe(draws[, "ln_tau"]), ln_sigma = describe(draws[, "ln_sigma"]))
}

runs <- expand.grid(name = names(starts), noise = c("normal", "t4"), stringsAsFactors = FALSE)
results <- parallel::mclapply(seq_len(nrow(runs)), function(k) sample_posterior(runs$name[k], runs$noise[k]), mc.cores = 1)
write_json(list(levels = levels, iterations = iterations, chains = 4, thin = 10, jags = as.character(jags.version()), runs = results),
           "posterior/posterior.json", digits = NA, auto_unbox = TRUE, pretty = TRUE)
