#!/usr/bin/env bash
# Plays a whole session on the real program in a real terminal (tmux): an empty logbook, the first run, the first card taken along,
# an outing typed and saved, the logbook with an undo, recordings looked at and saved, the curve, a kill in the middle of typing and the draft
# after it; then weeks of outings logged by another process until it is time to stop, the order sheet, the decision, the new paddle.
# Exits non-zero, showing the screen, if something expected is not on it.
#
#   tests/screens/play-session.sh [--captures DIR]      DIR gets the screens as text files, for the documentation
#   TRIALLOG=path/to/triallog                           the program; else the debug build
set -euo pipefail
cd "$(dirname "$0")/../.."

captures=
if [ "${1:-}" = --captures ]; then captures=$2; mkdir -p "$captures"; fi
source tests/screens/terminal.sh

press() { for key in "$@"; do tm send-keys "$key"; sleep 0.05; done; }
capture() { if [ -n "$captures" ]; then sleep 0.3; screen | sed 's/ *$//' > "$captures/$1.txt"; fi; }

# start COLUMNS ROWS [VARIABLE=VALUE...]
start() {
  local columns=$1 rows=$2
  shift 2
  tm kill-server 2>/dev/null || true
  sleep 0.2
  tm new-session -d -c "$folder" -x "$columns" -y "$rows" \
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
expect "Start at 50½ in."
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
expect "In OC1, start at"
expect "pieces of"
expect "Gain left"
capture home-first
pieces=$(screen | sed -n 's/.* \([0-9]*\) pieces of .*/\1/p' | head -1)

echo "the card on the watch, on paper, on the phone, in a message"
for way in "watch:card.fit" "paper:card.html" "phone:card-phone.html"; do
  press c
  expect "The card: where to?"
  type_text "${way%%:*}"
  press Enter
  expect "Into which file?"
  press Enter
  expect "The card is in"
  expect_file "${way#*:}"
done
press c
expect "The card: where to?"
type_text "tape"
press Enter
expect "The card in short"
press Escape
expect_gone "The card in short"

echo "typing the outing"
press Enter
expect "soreness"
number=0
for time in 5:34 5:31.8 5.33 5:36.1 5:34 5:35.5 5:36 5:37; do
  number=$((number + 1))
  if [ $number -gt "$pieces" ]; then break; fi
  type_text "$time"
  press Enter
  type_text "6"
  if [ $number = 2 ]; then capture enter-half; fi
  press Enter
done
type_text "1"
press C-z
press C-y
capture enter
press C-s
expect "Saved the outing of"
expect "Keep testing"
capture home

echo "the logbook"
press 3
expect "1 outing "
press Enter
expect "5:34"
press Down x
expect "Why does piece 1"
type_text "weed on the rudder"
press Enter
expect "out: weed on the rudder"
capture logbook
press u
expect "Undone"
expect_gone "out: weed on the rudder"
press d
expect "Deleted piece 1"
press u
expect "5:34 "
press /
type_text "5:31"
expect "find /"
press Escape
expect_gone "find /"

echo "a recording looked at, and left"
press i
expect "Import which file?"
type_text "$PWD/sample-sessions/recordings/ilse-round-trips-laps.fi"
expect "There is no file"
type_text "t"
press Enter
expect "✗ warm-up"
# The card of today cannot be that of an outing in May, so its lengths are asked for, not guessed.
expect "No card was open"
press x
expect "dropped by hand"
capture recording
press Escape
expect "This recording is not saved."
press Escape
expect "nothing was saved"

echo "several recordings, of which one is saved, and undone"
press i
expect "Import which file?"
type_text "$PWD/sample-sessions/recordings/*"
press Enter
expect "3 outings to look at"
capture recordings
press v
expect "Recorded outings in words"
press Escape
expect_gone "Recorded outings in words"
press Down x
expect "2 outings to look at"
press u
expect "3 outings to look at"
press Up Enter
expect "bram-round-trips"
press Enter
expect "Of the 4 pieces that count"
type_text "49, 50.5, 50.5, 49"
press Enter
type_text "6"
press C-s
expect "effort 6"
press C-s
expect "2 outings to look at"
press Escape
expect "nothing more was saved"
expect "2 outings "
press u
expect "Undone"
expect "1 outing "

echo "curve, progress, body and boats, squad"
press 4
expect "◆ best"
expect "chance of each setting"
capture curve
press 5
expect "price of an outing"
capture progress
press 6
expect "In every hull, for every blade"
expect "OC6"
capture body
press 7
expect "this week"
capture squad
press F2
expect "What do you want to do?"
capture actions
press Escape
expect_gone "What do you want to do?"
press F1
expect "Who needs you first"
capture explanation
press Escape
expect "this week"

echo "a larger terminal, and back"
tm resize-window -x 140 -y 45
expect "6 Body and boats"
press 1
expect "pieces of"
capture home-140x45
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
expect "pieces of"
expect "* best"
if screen | LC_ALL=C grep -q '[^ -~]'; then
  echo "FAILED: more than ASCII with LANG=C:"
  screen
  exit 1
fi
capture home-ascii
press q
expect "ENDED WITH 0"

echo "weeks of outings, logged by another process and seen here"
start 80 24
expect "pieces of"
# What was typed above goes on beside them.
paddle_until_it_is_time_to_stop
# The last outing is seen within two seconds, and worked out again.
sleep 3
expect "stop testing"
expect_gone "pieces of"
capture home-settled

echo "the order, the decision, the follow-up with the new paddle"
# The sheet is there once the lengths for the other hulls are worked out; until then the key says so.
for _ in $(seq 20); do
  press o
  sleep 0.5
  if screen | grep -qF "Order sheet (to"; then break; fi
done
# The line of keys names the sheet, too, so its own heading is waited for; and a key that follows an escape too soon is read with it as one.
expect "Order sheet (to"
capture order
press Escape
expect_gone "Order sheet (to"
expect "stop testing"
press r
expect "Noted:"
press 6
press a
expect "Another paddle"
for text in "Heron fixed" 18.5 49 49; do
  type_text "$text"
  press Enter
done
press C-s
expect "Added the paddle Heron fixed"
press 1 p
expect "With which paddle?"
type_text "heron"
press Enter
expect "fixed at 49 in"
capture home-fixed

echo "the card to a partner, blind"
press p
expect "With which paddle?"
type_text "my"
press Enter
expect "stop testing"
press c
expect "The card: where to?"
type_text "blind"
press Enter
expect "Into which file?"
press Enter
expect "The card is in"
expect_file partner.txt
# The screen is drawn anew once the card given out is in the logbook; a key pressed just then may go to what it replaces.
expect_gone "Into which file?"
sleep 1
press c
expect "to the partner again"
press Escape
expect_gone "to the partner again"
press q
expect "ENDED WITH 0"

echo "session played"
