# The classical view of the sample logbooks: the same columns as the program lays out, lme4 and nlme, Fieller's set.
suppressMessages({library(lme4); library(nlme); library(jsonlite)})
source("classical/reml.R")
source("classical/fieller.R")

one <- function(name, hull) {
  log <- read.csv(file.path("logbooks", paste0(name, ".csv")))
  log <- log[log$hull == hull, ]
  y <- 100 * log(log$distance_m / log$time_s)
  x <- log$length_in - mean(log$length_in)
  columns <- list(length = x, length_squared = x^2, order = log$piece - 1, effort = log$effort - mean(log$effort),
                  ln_distance = log(log$distance_m) - mean(log(log$distance_m)))
  columns <- columns[sapply(columns, function(column) diff(range(column)) > 1e-9)]
  fit <- reml(y, columns, log$date)
  b <- fit$lme4$coefficients; V <- fit$lme4$covariance; df <- fit$nlme$degrees_of_freedom[2]
  set <- fieller_roots(-b[2], 2 * b[3], V[2, 2], 4 * V[3, 3], -2 * V[2, 3], qt(0.95, df))
  c(list(logbook = name, hull = hull, names = names(columns), centre = mean(log$length_in)), fit,
    list(degrees_of_freedom = df, vertex = mean(log$length_in) - b[2] / (2 * b[3]), shape = set$shape, roots = mean(log$length_in) + set$roots))
}

write_json(list(one("one-hull", "OC1"), one("two-hulls", "OC1"), one("two-hulls", "OC2"), one("spoiled", "OC1")),
           "classical/logbooks.json", digits = NA, auto_unbox = TRUE, pretty = TRUE)
