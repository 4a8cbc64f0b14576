# Derives every figure that src/TrialLog.Domain/Sizing/BodySurvey.cs carries.
#
#   Rscript ansur-ii.R FILE.csv... > ansur-ii.csv
#
# FILE.csv: the public release of the 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II; one file for women,
# one for men, or both in one), millimetres. Source: Gordon et al. 2014, NATICK/TR-15/007, a work of the US government.
# The rows are not part of this project; only what this script prints is.
# Needed columns, with or without a trailing _mm: Gender or sex, stature, sittingheight, eyeheightsitting, acromialheight,
# biacromialbreadth, shoulderelbowlength, forearmcenterofgriplength, span, overheadfingertipreachsitting, handlength, palmlength.

needed <- c("sex", "stature", "sittingheight", "eyeheightsitting", "acromialheight", "biacromialbreadth", "shoulderelbowlength",
            "forearmcenterofgriplength", "span", "overheadfingertipreachsitting", "handlength", "palmlength")
read <- function(file) {
  rows <- read.csv(file, check.names = FALSE)
  names(rows) <- sub("_mm$", "", tolower(names(rows)))
  names(rows)[names(rows) == "gender"] <- "sex"
  rows$sex <- toupper(substr(rows$sex, 1, 1))
  rows[needed]
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
  ArmSpan = span / inches,
  OverheadReach = overheadfingertipreachsitting / inches,
  HandLength = handlength / inches,
  PalmLength = palmlength / inches,
  CrownAboveEye = (sittingheight - eyeheightsitting) / inches))
# What a seated paddle is sized by: the arm raised straight up, to the middle of the palm.
d$SeatedReach <- d$OverheadReach - d$HandLength + d$PalmLength / 2

say <- function(...) cat(paste(..., sep = ","), "\n", sep = "")
digits <- function(x) formatC(x, format = "f", digits = 4)
say("figure", "value")
women <- d$sex == "F"
weight <- ifelse(women, 0.5 / sum(women), 0.5 / sum(!women))
say("n women", sum(women)); say("n men", sum(!women))
for (name in setdiff(names(d), "sex")) {
  x <- d[[name]]
  say(paste(name, "mean women"), digits(mean(x[women]))); say(paste(name, "sd women"), digits(sd(x[women])))
  say(paste(name, "mean men"), digits(mean(x[!women]))); say(paste(name, "sd men"), digits(sd(x[!women])))
  say(paste(name, "least"), digits(min(x))); say(paste(name, "most"), digits(max(x)))
  mean_alike <- sum(weight * x)
  say(paste(name, "mean alike"), digits(mean_alike))
  say(paste(name, "sd alike"), digits(sqrt(sum(weight * (x - mean_alike)^2))))
}
for (other in setdiff(names(d), c("sex", "Stature", "CrownAboveEye"))) {
  ratio <- d[[other]] / d$Stature
  say(paste(other, "over Stature least"), digits(min(ratio))); say(paste(other, "over Stature most"), digits(max(ratio)))
}
near <- d$SeatedReach[abs(d$Stature - 68) <= 0.25]
say("n at a stature of 68 in", length(near))
say("SeatedReach at a stature of 68 in least", digits(min(near))); say("SeatedReach at a stature of 68 in most", digits(max(near)))
segments <- d$SittingShoulderHeight + d$ShoulderElbow + d$ElbowGrip - d$SeatedReach
say("sum of segments less SeatedReach mean women", digits(mean(segments[women])))
say("sum of segments less SeatedReach mean men", digits(mean(segments[!women])))

# The lines, and how many of the survey's people the 90 % range of a start length holds that is made from each: a best length
# lies around the true reach with a spread of 0.8 in, and each measure is read off a tape with an error. Both are chosen
# (docs/sizing.md), as in StartLength and ReachLine; a test holds the two against each other.
own <- 0.8
tape <- c(Stature = 0, OverheadReach = 0, EyeHeight = 0.25, SittingShoulderHeight = 0.25, ShoulderElbow = 0.25, ElbowGrip = 0.25, ArmSpan = 0.25)
ninety <- 1.645
holds <- function(name, error, spread, noise) {
  half <- ninety * sqrt(spread^2 + noise^2)
  inside <- pnorm((half - error) / noise) - pnorm((-half - error) / noise)
  say(paste(name, "start spread"), digits(half / ninety))
  say(paste(name, "holds women"), digits(mean(inside[women]))); say(paste(name, "holds men"), digits(mean(inside[!women])))
}
alike <- sum(weight * d$SeatedReach)
holds("nothing", d$SeatedReach - alike, sqrt(sum(weight * (d$SeatedReach - alike)^2)), own)
for (terms in c("SittingShoulderHeight", "EyeHeight", "ArmSpan", "Stature", "Stature+EyeHeight", "Stature+SittingShoulderHeight",
                "Stature+ArmSpan", "EyeHeight+ArmSpan", "SittingShoulderHeight+ArmSpan", "EyeHeight+SittingShoulderHeight+ArmSpan",
                "SittingShoulderHeight+ShoulderElbow", "SittingShoulderHeight+ElbowGrip", "SittingShoulderHeight+ShoulderElbow+ElbowGrip",
                "Stature+SittingShoulderHeight+ShoulderElbow+ElbowGrip", "EyeHeight+ShoulderElbow+ElbowGrip", "OverheadReach")) {
  fit <- lm(as.formula(paste("SeatedReach ~", terms)), d)
  name <- paste("line", terms)
  say(paste(name, "intercept"), digits(coef(fit)[[1]]))
  for (i in seq_along(coef(fit))[-1]) say(paste(name, names(coef(fit))[i]), digits(coef(fit)[[i]]))
  say(paste(name, "spread"), digits(summary(fit)$sigma))
  say(paste(name, "mean error women"), digits(mean(resid(fit)[women]))); say(paste(name, "mean error men"), digits(mean(resid(fit)[!women])))
  holds(name, resid(fit), summary(fit)$sigma, sqrt(own^2 + sum((coef(fit)[-1] * tape[names(coef(fit))[-1]])^2)))
}
