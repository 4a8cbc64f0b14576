#!/usr/bin/env bash
# Plays first run, outing, card, recordings, answer and order sheet on the real program in a real terminal (tmux) with the mouse: letters and digits
# are typed, everything else is clicked. Exits non-zero, showing the screen, if something expected is not on it.
#
#   tests/screens/mouse-session.sh              TRIALLOG=path/to/triallog: the program; else the debug build
set -euo pipefail
cd "$(dirname "$0")/../.."

source tests/screens/terminal.sh

# Clicks where a text stands, so many cells right of its beginning; of several the last, since keys stand on the last line.
click() {
  expect "$1"
  local place
  place=$(screen | python3 -c '
import sys
text, right = sys.argv[1], int(sys.argv[2])
rows = [(y, line.find(text)) for y, line in enumerate(sys.stdin.read().split("\n"), 1) if text in line]
y, x = rows[-1]
print(f"{x + 1 + right};{y}")' "$1" "${2:-0}")
  tm send-keys -l $'\e'"[<0;${place}M"
  tm send-keys -l $'\e'"[<0;${place}m"
  sleep 0.3
}

tm new-session -d -c "$folder" -x 140 -y 45 "env LANG=C.UTF-8 '$program' --store '$folder/logbook.db'; echo \"ENDED WITH \$?\"; sleep 600"

echo "first run"
expect "Who is paddling?"
click "Name" 22
type_text "Ilse Maro"
click "next step"
expect "From which length"
click "Length  " 22
type_text "50.5"
expect "Start at 50½ in."
click "next step"
click "Race it is for" 22
type_text "10km"
click "next step"
expect "Which paddle do you have?"
click "to your first card"
expect "In OC1, start at"

echo "an outing"
click "type the outing"
expect "soreness"
pieces=$(screen | grep -c "1 km")
for number in $(seq "$pieces"); do
  click "  $number " 29
  type_text "5:3$((number % 5)).$number"
done
click "soreness" 12
type_text "0"
click "S save" 2
expect "Saved the outing of"

echo "the card on the phone"
click "c card" 2
click "on the phone"
expect "Into which file?"
click "do it"
expect "The card is in"
expect_file card-phone.html

echo "several recordings, of which one is looked at"
click "3 Logbook" 3
click "i import" 2
expect "Import which file?"
type_text "$PWD/sample-sessions/recordings/*"
click "do it"
expect "3 outings to look at"
click "ilse-round-trips"
expect "2026-05-09 16:00"
click "cool-down"
click "x count" 2
expect_gone "cool-down"
click "Esc leave" 4
expect "3 outings to look at"
click "x out" 2
expect "2 outings to look at"
click "u undo" 2
expect "3 outings to look at"
click "leave them all"
expect "These recordings are not saved."
click "leave them all"
expect "nothing more was saved"
click "1 Home" 3

echo "weeks of outings, logged by another process and seen here"
paddle_until_it_is_time_to_stop
expect "stop testing"

echo "the screens, the order sheet, the decision"
click "3 Logbook" 3
expect "outings"
click "4 Curve" 3
expect "chance of each setting"
click "in words"
expect "By the middle line"
click "back"
click "5 Progress" 3
expect "price of an outing"
click "1 Home" 3
expect "stop testing"
for _ in $(seq 20); do
  click "order sheet"
  if screen | grep -qF "Order sheet (to"; then break; fi
  sleep 0.5
done
expect "Order sheet (to"
click "back"
click "race it"
expect "Noted:"
expect "Raced at"

echo "the follow-up with the new paddle"
click "6 Body and boats" 3
click "add paddle"
expect "Another paddle"
click "Name" 24
type_text "Heron fixed"
click "Blade, to throat" 26
type_text "18.5"
click "Shortest length" 26
type_text "49"
click "Longest length" 26
type_text "49"
click "S save" 2
expect "Added the paddle Heron fixed"
click "1 Home" 3
click "p paddle"
expect "With which paddle?"
# The message line names it, too, after a single blank.
click "  Heron fixed" 3
expect "fixed at 49 in"
# The line of keys is another one while something is worked out.
expect_gone "stop working it out"
click "q quit"
expect "ENDED WITH 0"

echo "session played with the mouse"
