# Fieller's set, found as the roots of |a - rho b| = t se(rho) by bracketing, not by the quadratic formula.
library(jsonlite)

fieller_roots <- function(a, b, va, vb, cov, t) {
  excess <- function(rho) (a - rho * b)^2 - t^2 * (va - 2 * rho * cov + rho^2 * vb)
  # A fine walk over tan() of an angle sees the whole line, far ends included.
  angles <- seq(-pi / 2 + 1e-6, pi / 2 - 1e-6, length.out = 20001)
  values <- excess(tan(angles)) * cos(angles)^2
  change <- which(values[-1] * values[-length(values)] < 0)
  roots <- sapply(change, function(k) tan(uniroot(function(angle) excess(tan(angle)) * cos(angle)^2, angles[c(k, k + 1)], tol = 1e-15)$root))
  inside_far <- values[1] <= 0
  if (length(roots) == 0) return(list(shape = if (inside_far) "Everything" else "Empty", roots = numeric(0)))
  list(shape = if (inside_far) "Outside" else "Bounded", roots = sort(roots))
}

if (sys.nframe() == 0) {
  set.seed(5)
  cases <- lapply(1:60, function(k) {
    a <- rnorm(1); b <- rnorm(1, 0, 1.2); sa <- exp(rnorm(1, -1)); sb <- exp(rnorm(1, -1)); r <- runif(1, -0.95, 0.95)
    t <- qt(0.95, sample(3:40, 1))
    inputs <- lapply(list(a = a, b = b, va = sa^2, vb = sb^2, cov = r * sa * sb, t = t), signif, 12)
    c(inputs, do.call(fieller_roots, inputs))
  })
  print(table(sapply(cases, `[[`, "shape")))
  write_json(cases, "classical/fieller.json", digits = NA, auto_unbox = TRUE, pretty = FALSE)
}
