#!/usr/bin/env bash
# How much longer R takes with lme4, which fits one mixed model, than a published `triallog next` on the same 60 outings of 4 pieces.
#   tests/reference/speed.sh PROGRAM      prints processor seconds (user and system) of five runs each, in turn
set -euo pipefail
program=$(realpath "$1")
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
cd "$scratch"
awk 'BEGIN {
  print "paddler,date,outing,piece,hull,paddle,length_in,distance_m,time_s,effort,wind"
  for (i = 0; i < 60; i++) for (j = 0; j < 4; j++)
    printf "Bram Okello,1990-%02d-%02d,,%d,OC1,Reed,%.2f,1000,%.1f,%d,%d\n", 1 + int(i / 28), 1 + i % 28, j + 1,
      49.5 + (j % 3 ? 1.25 : 0) + i % 3 * 0.25, 330 + 7 * sin(i * 1.7) + 1.1 * j + 2 * sin(i * 4 + j * 2.3), 5 + (i + j) % 3, i % 5
}' > season.csv
cat > season.R <<'R'
suppressMessages(library(lme4))
log <- read.csv("season.csv")
log$y <- 100 * log(log$distance_m / log$time_s)
log$x <- log$length_in - mean(log$length_in)
print(fixef(lmer(y ~ x + I(x^2) + effort + piece + (1 | date), log)))
R
"$program" --store season.db import season.csv > /dev/null 2>&1
TIMEFORMAT='%U + %S'
for _ in 1 2 3 4 5; do
  printf 'R: '; { time Rscript season.R > /dev/null 2> r.txt; } 2>&1
  printf 'next: '; { time "$program" --store season.db next > /dev/null 2> next.txt; } 2>&1
done
