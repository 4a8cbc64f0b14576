# Completion for fish: put this file into ~/.config/fish/completions/
complete -c triallog -a '(triallog "[suggest:"(string length -- (commandline -cp))"]" (commandline -cp) 2>/dev/null)'
