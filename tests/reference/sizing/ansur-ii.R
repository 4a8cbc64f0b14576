# Derives every figure that src/TrialLog.Domain/Sizing/BodySurvey.cs carries.
#
#   Rscript ansur-ii.R FILE.csv... > ansur-ii.csv
#
# FILE.csv: the public release of the 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II; one file for women,
# one for men, or both in one), millimetres. Source: Gordon et al. 2014, NATICK/TR-15/007, a work of the US government.
# The rows are not part of this project; only what this script prints is.
# Needed columns, with or without a trailing _mm: Gender or sex, stature, sittingheight, eyeheightsitting,
# acromialheight, biacromialbreadth, shoulderelbowlength, forearmcenterofgriplength.

read <- function(file) {
  rows <- read.csv(file, check.names = FALSE)
  names(rows) <- sub("_mm$", "", tolower(names(rows)))
  names(rows)[names(rows) == "gender"] <- "sex"
  rows$sex <- toupper(substr(rows$sex, 1, 1))
  rows[c("sex", "stature", "sittingheight", "eyeheightsitting", "acromialheight", "biacromialbreadth",
         "shoulderelbowlength", "forearmcenterofgriplength")]
}
rows <- do.call(rbind, lapply(commandArgs(trailingOnly = TRUE), read))

inches <- 25.4
d <- with(rows, data.frame(
  sex,
  Stature = stature / inches,
  EyeHeight = eyeheightsitting / inches,
  SittingShoulderHeight = (acromialheight - (stature - sittingheight)) / inches,
  ShoulderElbow = shoulderelbowlength / inches,
  ElbowGrip = forearmcenterofgriplength / inches,
  ShoulderBreadth = biacromialbreadth / inches,
  CrownAboveEye = (sittingheight - eyeheightsitting) / inches))
d$SeatedReach <- d$SittingShoulderHeight + d$ShoulderElbow + d$ElbowGrip

say <- function(...) cat(paste(..., sep = ","), "\n", sep = "")
digits <- function(x) formatC(x, format = "f", digits = 4)
say("figure", "value")
women <- d$sex == "F"
say("n women", sum(women)); say("n men", sum(!women))
for (name in c("Stature", "EyeHeight", "SittingShoulderHeight", "ShoulderElbow", "ElbowGrip", "ShoulderBreadth",
               "CrownAboveEye", "SeatedReach")) {
  x <- d[[name]]
  say(paste(name, "mean women"), digits(mean(x[women]))); say(paste(name, "sd women"), digits(sd(x[women])))
  say(paste(name, "mean men"), digits(mean(x[!women]))); say(paste(name, "sd men"), digits(sd(x[!women])))
  say(paste(name, "least"), digits(min(x))); say(paste(name, "most"), digits(max(x)))
  weight <- ifelse(women, 0.5 / sum(women), 0.5 / sum(!women))
  mean_alike <- sum(weight * x)
  say(paste(name, "mean alike"), digits(mean_alike))
  say(paste(name, "sd alike"), digits(sqrt(sum(weight * (x - mean_alike)^2))))
}
say("correlation of SeatedReach with Stature", digits(cor(d$SeatedReach, d$Stature)))
for (other in c("SeatedReach", "EyeHeight", "SittingShoulderHeight", "ShoulderElbow", "ElbowGrip", "ShoulderBreadth")) {
  ratio <- d[[other]] / d$Stature
  say(paste(other, "over Stature least"), digits(min(ratio))); say(paste(other, "over Stature most"), digits(max(ratio)))
}
near <- d$SeatedReach[abs(d$Stature - 68) <= 0.25]
say("n at a stature of 68 in", length(near))
say("SeatedReach least at a stature of 68 in", digits(min(near))); say("SeatedReach most at a stature of 68 in", digits(max(near)))
for (terms in c("EyeHeight", "SittingShoulderHeight", "Stature", "Stature+EyeHeight", "Stature+SittingShoulderHeight",
                "SittingShoulderHeight+ShoulderElbow", "SittingShoulderHeight+ElbowGrip",
                "Stature+SittingShoulderHeight+ShoulderElbow", "Stature+SittingShoulderHeight+ElbowGrip")) {
  fit <- lm(as.formula(paste("SeatedReach ~", terms)), d)
  say(paste("line", terms, "intercept"), digits(coef(fit)[[1]]))
  for (i in seq_along(coef(fit))[-1]) say(paste("line", terms, names(coef(fit))[i]), digits(coef(fit)[[i]]))
  say(paste("line", terms, "spread"), digits(summary(fit)$sigma))
}
