# Least squares on R's own longley data, in the units of the NIST Statistical Reference Datasets (StRD, Linear Least
# Squares Regression, Longley; J. W. Longley 1967, J Am Stat Assoc 62:819-41).
library(jsonlite)
data <- with(longley, data.frame(
  y = round(Employed * 1000), deflator = GNP.deflator, gnp = round(GNP * 1000), unemployed = round(Unemployed * 10),
  forces = round(Armed.Forces * 10), population = round(Population * 1000), year = Year))
fit <- summary(lm(y ~ ., data))
write_json(list(
  source = "R datasets::longley (J. W. Longley 1967, J Am Stat Assoc 62:819-41; figures of the United States government, public domain)",
  y = data$y, columns = lapply(data[-1], identity),
  lm = list(coefficients = unname(fit$coefficients[, 1]), standard_errors = unname(fit$coefficients[, 2]), residual_sd = fit$sigma)),
  "classical/longley.json", digits = NA, auto_unbox = TRUE, pretty = TRUE)
