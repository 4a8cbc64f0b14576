#!/usr/bin/env bash
# Plays a whole session on the real program in a real terminal (tmux): an empty logbook, the first run, the first card,
# an outing typed and saved, the logbook with an undo, a recording looked at, the curve, a kill in the middle of typing, and the draft after it.
# Exits non-zero, showing the screen, if something expected is not on it.
#
#   tests/screens/play-session.sh [--captures DIR]      DIR gets the screens as text files, for the documentation
#   TRIALLOG=path/to/triallog                           the program; else the debug build
set -euo pipefail
cd "$(dirname "$0")/../.."

program=${TRIALLOG:-$PWD/src/TrialLog/bin/Debug/net10.0/triallog}
captures=
if [ "${1:-}" = --captures ]; then captures=$2; mkdir -p "$captures"; fi
if ! command -v tmux >/dev/null; then
  echo "NOT PLAYED: tmux is not installed"
  exit 0
fi

folder=$(mktemp -d)
socket=triallog-$$
tm() { tmux -L "$socket" -f /dev/null "$@"; }
finish() { tm kill-server 2>/dev/null || true; rm -rf "$folder"; }
trap finish EXIT

screen() { tm capture-pane -p; }

# Waits until a text is on the screen.
expect() {
  for _ in $(seq 300); do
    if screen 2>/dev/null | grep -qF -- "$1"; then return 0; fi
    sleep 0.1
  done
  echo "FAILED: “$1” is not on the screen:"
  screen || true
  exit 1
}

# Waits until a text is gone.
expect_gone() {
  for _ in $(seq 100); do
    if ! screen | grep -qF -- "$1"; then return 0; fi
    sleep 0.1
  done
  echo "FAILED: “$1” is still on the screen:"
  screen
  exit 1
}

press() { for key in "$@"; do tm send-keys "$key"; sleep 0.05; done; }
type_text() { tm send-keys -l "$1"; sleep 0.1; }
capture() { if [ -n "$captures" ]; then sleep 0.3; screen | sed 's/ *$//' > "$captures/$1.txt"; fi; }

# start COLUMNS ROWS [VARIABLE=VALUE...]
start() {
  local columns=$1 rows=$2
  shift 2
  tm kill-server 2>/dev/null || true
  sleep 0.2
  tm new-session -d -x "$columns" -y "$rows" \
    "env LANG=C.UTF-8 $* '$program' --store '$folder/logbook.db'; echo \"ENDED WITH \$?\"; sleep 600"
}

echo "first run"
start 80 24
expect "Who is paddling?"
capture first-run-1
type_text "Ilse Maro"
press F9
expect "From which length shall the search start, Ilse Maro?"
press Enter
type_text "5o"
expect "is not a length"
press BSpace
type_text "0.5"
expect "Start at 50 ½ in."
capture first-run-2
press F9
expect "What do you paddle?"
press Enter
type_text "10km"
press F9
expect "Which paddle do you have?"
capture first-run-4
press F9

echo "the first card"
expect "Paddle these"
expect "gain left"
capture next-outing-first

echo "typing the outing"
press Enter
expect "soreness"
number=0
for time in 5:34.2 5:31.8 5:33.0 5:36.1; do
  number=$((number + 1))
  type_text "$time"
  press Enter
  type_text "6"
  if [ $number = 2 ]; then capture enter-half; fi
  press Enter
done
type_text "1"
capture enter
press F9
expect "Saved the outing of"
expect "from 1 outing and 4 pieces"
capture next-outing

echo "the logbook"
press 3
expect "1 outing "
press Enter
expect "5:34.2"
press Down x
expect "Why does piece 1"
type_text "weed on the rudder"
press Enter
expect "out: weed on the rudder"
capture logbook
press u
expect "Taken back"
expect_gone "out: weed on the rudder"
press d
expect "Deleted piece 1"
press u
expect "5:34.2"

echo "a recording looked at, and left"
press i
expect "Import which file?"
type_text "$PWD/sample-sessions/recordings/ilse-round-trips-laps.fi"
expect "There is no file"
type_text "t"
press Enter
expect "✗ warm-up"
press d
# The card of today cannot be that of an outing in May, so its lengths are asked for, not guessed.
expect "say the length of each"
capture recording
press Escape
expect "nothing was saved"

echo "curve, progress, body and boats, squad"
press 4
expect "◆ best"
expect "chance of each setting"
capture curve
press 5
expect "worthwhile"
capture progress
press 6
expect "In every hull, for every blade"
expect "OC6"
capture body
press 7
expect "Ilse Maro"
expect "trend"
capture squad
press F1
expect "One row a paddler"
capture explanation
press Escape
expect "trend"

echo "a larger terminal, and back"
tm resize-window -x 140 -y 45
expect "6 Body and boats"
press 1
expect "Paddle these"
capture next-outing-140x45
tm resize-window -x 80 -y 24
expect_gone "Body and boats"

echo "quitting in the middle of typing"
press Enter
expect "soreness"
type_text "5:40"
press Enter
expect "5:40 /km"
press C-q
expect "ENDED WITH 0"

echo "back again, killed, and back again"
start 80 24
expect "half typed"
press Enter
expect "as you left it"
expect "5:40"
type_text "7"
press Enter
type_text "5:41"
sleep 0.5
kill -KILL "$(tm list-panes -F "#{pane_pid}" | head -1 | xargs pgrep -P | head -1)"
start 80 24 NO_COLOR=1
expect "half typed"
press Enter
expect "5:41"
if tm capture-pane -pe | grep -q $'\e\[[0-9;]*3[0-7]m'; then
  echo "FAILED: a colour with NO_COLOR set"
  exit 1
fi
press C-q
expect "ENDED WITH 0"

echo "a terminal that has only ASCII"
start 80 24 LANG=C LC_ALL=C
expect "Paddle these"
expect "* best"
if screen | LC_ALL=C grep -q '[^ -~]'; then
  echo "FAILED: more than ASCII with LANG=C:"
  screen
  exit 1
fi
capture next-outing-ascii
press q
expect "ENDED WITH 0"

echo "session played"
