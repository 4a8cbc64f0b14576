# Makes the invented logbooks that the references are computed on. Nobody paddled them: the truth behind each is in the
# call that makes it. Paddlers, club and lagoon are invented.
#   Rscript logbooks/make.R          (from tests/reference)

inches_to_quarter <- function(x) round(4 * x) / 4

# One paddler's season. `theta` is the best length in inches, `c` the curvature in % per square inch, both for a solo hull.
season <- function(file, paddler, seed, hulls, start, theta, c, tau, sigma, spoiled = 0, delta = 0, distances = 1000,
                   efforts = 6, pieces = c(-0.75, 0.75, 0.75, -0.75), outings = 8, paddle = "Long river") {
  set.seed(seed)
  rows <- list()
  for (j in seq_len(outings)) {
    hull <- hulls[(j - 1) %% length(hulls) + 1]
    crew <- c(OC1 = 1, OC2 = 2)[[hull]]
    offset <- c(OC1 = 0, OC2 = -1)[[hull]]
    level <- 100 * log(c(OC1 = 3.05, OC2 = 3.35)[[hull]])
    u <- rnorm(1, 0, tau)
    distance <- distances[(j - 1) %% length(distances) + 1]
    around <- start + offset + c(0, 0.25, -0.25, 0.5)[(j - 1) %% 4 + 1]
    for (i in seq_along(pieces)) {
      length <- inches_to_quarter(around + pieces[i] * if (j %% 2) 1 else -1)
      effort <- efforts[sample.int(length(efforts), 1)]
      best <- theta + offset + if (hull == "OC2") delta else 0
      noise <- sigma * rt(1, 4) - if (runif(1) < spoiled) rexp(1, 1 / 5) else 0
      y <- level + u - 0.3 * (i - 1) + 3 * (effort - 6) - 6 * log(distance / 1000) - c / crew * (length - best)^2 + noise
      rows[[length(rows) + 1]] <- data.frame(
        paddler = paddler, date = format(as.Date("2026-03-03") + 5 * (j - 1)), outing = "", piece = i, hull = hull, paddle = paddle,
        length_in = sprintf("%.2f", length), distance_m = distance, time_s = sprintf("%.1f", distance / exp(y / 100)),
        effort = effort)
    }
  }
  write.csv(do.call(rbind, rows), file, row.names = FALSE, quote = FALSE, eol = "\n")
}

season("logbooks/one-hull.csv", "Ilse Maro", 11, "OC1", start = 50, theta = 49.4, c = 0.5, tau = 2.5, sigma = 0.9,
       efforts = c(6, 6, 6, 6.5), distances = c(1000, 1000, 2000), outings = 8)
season("logbooks/two-hulls.csv", "Bram Okello", 12, c("OC1", "OC2"), start = 51, theta = 51.6, c = 0.45, tau = 2.5, sigma = 0.9,
       delta = -0.3, efforts = c(6, 6, 5.5), outings = 10)
season("logbooks/spoiled.csv", "Tova Lind", 13, "OC1", start = 48, theta = 47.5, c = 0.4, tau = 2, sigma = 0.8, spoiled = 0.15,
       efforts = 6, outings = 9)
# one-sided.csv is a log whose curve, without bounds on its lopsidedness, could not be told from a cliff on one side; one-sided-again.csv
# is the same four times over. Both are what the tests' LogOf.Healthy(outings: 4, seed: 92) makes, written out.
