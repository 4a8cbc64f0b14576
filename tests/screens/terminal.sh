# What the sessions share: the program in a terminal of its own (tmux), waiting for what is on its screen, outings logged beside it.
# Read by `source` from the repository's top, after `set -euo pipefail`. Sets $program and $folder (a scratch folder, gone in the end).
program=$(realpath "${TRIALLOG:-src/TrialLog/bin/Debug/net10.0/triallog}")
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
type_text() { tm send-keys -l "$1"; sleep 0.1; }

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

# Whether a file was written beside the logbook.
expect_file() {
  if [ -s "$folder/$1" ]; then return 0; fi
  echo "FAILED: there is no $1 in $(ls "$folder")"
  screen
  exit 1
}

# Logs outings by the card until it is time to stop, 25 at most: an invented paddler who is fastest at 49 in and loses half a percent an
# inch and a half from there.
paddle_until_it_is_time_to_stop() {
  local number card length piece arguments
  for number in $(seq 25); do
    card=$("$program" --store "$folder/logbook.db" next --json | tr -d ' \n' | sed 's/.*"lengths_in":\[\([^]]*\)\].*/\1/')
    arguments=() piece=0
    for length in ${card//,/ }; do
      piece=$((piece + 1))
      arguments+=("$length,1km,$(awk -v l="$length" -v n="$number" -v p="$piece" \
        'BEGIN { d = l - 49; printf "%.1fs", 330 + (n * 7 % 5) + p * 0.4 + d * d * 1.1 + ((n * 3 + p * 5) % 7 - 3) * 0.25 }'),6")
    done
    "$program" --store "$folder/logbook.db" log --date "$(date -d "$((60 - 2 * number)) days ago" +%Y-%m-%d)" "${arguments[@]}" >/dev/null
    if "$program" --store "$folder/logbook.db" next --json | grep -q '"standing": *"\(settled\|flat\)"'; then return 0; fi
  done
}
