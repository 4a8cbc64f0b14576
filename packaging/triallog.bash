# Completion for bash: source this file, or put it into ~/.local/share/bash-completion/completions/triallog
_triallog() {
  local word=${COMP_WORDS[COMP_CWORD]}
  mapfile -t COMPREPLY < <(compgen -W "$(triallog "[suggest:$COMP_POINT]" "$COMP_LINE" 2>/dev/null)" -- "$word")
}
complete -o default -F _triallog triallog
