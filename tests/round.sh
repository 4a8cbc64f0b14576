#!/usr/bin/env bash
# A whole round through the built program: add a paddler and a paddle, import, next, export, import again.
# Exit codes and what is printed are checked; the JSON against docs/schemas is checked by the tests.
set -euo pipefail
cd "$(dirname "$0")/.."
# Another build of it: PROGRAM=artifacts/linux-x64/triallog tests/round.sh
read -ra program <<<"${PROGRAM:-dotnet src/TrialLog/bin/Debug/net10.0/triallog.dll}"
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
export TRIALLOG_STORE="$folder/log.db" NO_COLOR=1

expect() { # expect CODE TEXT command...
  local code=$1 text=$2 got=0
  shift 2
  "$@" > "$folder/out" 2> "$folder/err" || got=$?
  if [ "$got" != "$code" ] || ! grep -qF -- "$text" "$folder/out" "$folder/err"; then
    printf 'expected exit %s and "%s" from: %s\ngot exit %s and:\n' "$code" "$text" "$*" "$got"
    cat "$folder/out" "$folder/err"
    exit 1
  fi
}

expect 1 'There is no logbook at' "${program[@]}" next
expect 2 '--help' "${program[@]}" next --no-such-option
expect 0 'Ilse Maro' "${program[@]}" paddler add "Ilse Maro" --reach 50in --goal "OC1, 10km"
expect 1 'no paddle yet' "${program[@]}" next
expect 0 'Reed' "${program[@]}" paddle add Reed --blade 18.5in --range 47in..53in
expect 0 'Next outing' "${program[@]}" next
expect 1 'not a time' "${program[@]}" log --hull OC1 "50in,1km,five,6"
expect 0 'Logged' "${program[@]}" log "49.5in,1km,5:32,6" "50.5in,1km,5:31,6" "50.5in,1km,5:33,6" "49.5in,1km,5:35,6"
expect 0 'outings' "${program[@]}" next --json
expect 0 '2 pieces' "${program[@]}" import tests/round.csv
expect 0 'Next outing' "${program[@]}" next --paddler "Ilse Maro"
expect 0 '' "${program[@]}" export --csv "$folder/all.csv"
expect 0 'were there already' "${program[@]}" import "$folder/all.csv"
TRIALLOG_STORE="$folder/second.db" expect 0 '6 pieces' "${program[@]}" import "$folder/all.csv"
# What was imported carries its fingerprint from then on; a second journey must change nothing at all.
TRIALLOG_STORE="$folder/second.db" expect 0 '6 pieces' "${program[@]}" export --csv "$folder/second.csv"
TRIALLOG_STORE="$folder/third.db" expect 0 '6 pieces' "${program[@]}" import "$folder/second.csv"
TRIALLOG_STORE="$folder/third.db" expect 0 '6 pieces' "${program[@]}" export --csv "$folder/third.csv"
cmp "$folder/second.csv" "$folder/third.csv"
expect 0 '2026-03-01' "${program[@]}" history
# Undo in a process of its own, as a user runs it, and nothing else read before.
expect 0 'Taken back' "${program[@]}" undo
if "${program[@]}" history | grep -q '2026-03-01'; then
  echo "undo left the imported outing in the log"
  exit 1
fi
expect 1 'line 2' "${program[@]}" import tests/round-wrong.csv
echo "the round holds"
