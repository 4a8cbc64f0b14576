# REML by lme4 and by nlme for one random intercept.
reml <- function(y, columns, group) {
  data <- data.frame(y = y, group = factor(group))
  for (name in names(columns)) data[[name]] <- columns[[name]]
  fixed <- if (length(columns)) paste(names(columns), collapse = " + ") else "1"

  parsed <- lFormula(as.formula(paste("y ~", fixed, "+ (1 | group)")), data, REML = TRUE)
  criterion <- do.call(mkLmerDevfun, parsed)
  scan <- c(0, exp(seq(log(1e-3), log(1e3), length.out = 200)))
  at <- which.min(sapply(scan, criterion))
  best <- optimize(criterion, c(scan[max(1, at - 1)], scan[min(length(scan), at + 1)]), tol = 1e-10)
  theta <- if (criterion(0) <= best$objective) 0 else best$minimum
  criterion(theta)
  model <- mkMerMod(environment(criterion), list(par = theta, fval = criterion(theta), conv = 0, message = ""), parsed$reTrms, parsed$fr)

  other <- lme(as.formula(paste("y ~", fixed)), data, ~ 1 | group, method = "REML",
               control = lmeControl(msTol = 1e-13, tolerance = 1e-12, msMaxIter = 1000, maxIter = 1000, opt = "nlminb"))
  list(
    lme4 = list(coefficients = unname(fixef(model)), standard_errors = unname(sqrt(diag(as.matrix(vcov(model))))),
                covariance = unname(as.matrix(vcov(model))),
                group_sd = unname(theta * sigma(model)), residual_sd = sigma(model), criterion = REMLcrit(model)),
    nlme = list(coefficients = unname(fixef(other)), standard_errors = unname(sqrt(diag(vcov(other)))),
                group_sd = sqrt(as.numeric(getVarCov(other))), residual_sd = other$sigma,
                criterion = -2 * as.numeric(logLik(other)), degrees_of_freedom = unname(other$fixDF$X)))
}
