# Random-intercept models by REML on data sets that ship with R's packages: lme4 with its profiled criterion minimised
# as closely as numbers allow, and nlme beside it.
suppressMessages({library(lme4); library(nlme); library(jsonlite)})
source("classical/reml.R")

ortho <- as.data.frame(nlme::Orthodont)
gas <- as.data.frame(nlme::Gasoline)
cases <- list(
  list(name = "sleepstudy", source = "lme4::sleepstudy (Belenky et al. 2003, J Sleep Res 12:1-12); package under GPL (>= 2)",
       y = lme4::sleepstudy$Reaction, group = lme4::sleepstudy$Subject, columns = list(days = lme4::sleepstudy$Days)),
  list(name = "sleepstudy-quadratic", source = "the same, with a quadratic in days",
       y = lme4::sleepstudy$Reaction, group = lme4::sleepstudy$Subject, columns = list(days = lme4::sleepstudy$Days, squared = lme4::sleepstudy$Days^2)),
  list(name = "Orthodont", source = "nlme::Orthodont (Potthoff and Roy 1964, Biometrika 51:313-26); package under GPL (>= 2)",
       y = ortho$distance, group = factor(as.character(ortho$Subject)), columns = list(age = ortho$age, female = as.numeric(ortho$Sex == "Female"))),
  list(name = "Gasoline", source = "nlme::Gasoline, groups of unequal size (Prater 1956; Pinheiro and Bates 2000, appendix A.9); package under GPL (>= 2)",
       y = gas$yield, group = factor(as.character(gas$Sample)), columns = list(endpoint = gas$endpoint - 330, squared = (gas$endpoint - 330)^2)),
  list(name = "Dyestuff2", source = "lme4::Dyestuff2, no variance between groups (Box and Tiao 1973, table 5.1.4); package under GPL (>= 2)",
       y = lme4::Dyestuff2$Yield, group = lme4::Dyestuff2$Batch, columns = list()))

write_json(lapply(cases, function(case) {
  group <- as.integer(factor(case$group, levels = unique(case$group)))
  c(list(name = case$name, source = case$source, y = case$y, group = group - 1L, columns = case$columns), reml(case$y, case$columns, group))
}), "classical/mixed.json", digits = NA, auto_unbox = TRUE, pretty = FALSE)
