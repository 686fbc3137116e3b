/**
 * The scripts hold no names: each asks `drybench offer` what may stand at the end of the line, and gets a line each of a word,
 * a tab and what it is; or `:file` or `:folder`, which the shell itself knows best.
 */
const bash = `# drybench in bash: words that fit, at a press of Tab. In ~/.bashrc:
#   eval "$(drybench completion bash)"
_drybench() {
  local word="\${COMP_WORDS[COMP_CWORD]}" offered
  COMPREPLY=()
  while IFS=$'\\t' read -r offered _; do
    case "$offered" in
      '') ;;
      :file) compopt -o filenames 2>/dev/null; while IFS= read -r offered; do COMPREPLY+=("$offered"); done < <(compgen -f -- "$word") ;;
      :folder) compopt -o filenames 2>/dev/null; while IFS= read -r offered; do COMPREPLY+=("$offered"); done < <(compgen -d -- "$word") ;;
      *) COMPREPLY+=("$offered") ;;
    esac
  done < <("\${COMP_WORDS[0]}" offer -- "\${COMP_LINE:0:COMP_POINT}" 2>/dev/null)
}
complete -F _drybench drybench
`;

const zsh = `#compdef drybench
# drybench in zsh: words that fit, at a press of Tab. In ~/.zshrc, after compinit:
#   eval "$(drybench completion zsh)"
_drybench() {
  local offered about
  local -a described before
  before=("\${(@)words[1,CURRENT-1]}" "$PREFIX")
  while IFS=$'\\t' read -r offered about; do
    case "$offered" in
      '') ;;
      :file) _files ;;
      :folder) _files -/ ;;
      *) described+=("\${offered//:/\\\\:}\${about:+:$about}") ;;
    esac
  done < <("\${words[1]}" offer -- "\${(j: :)before}" 2>/dev/null)
  (( \${#described} )) && _describe -V drybench described
}
if [[ "\${funcstack[1]}" == _drybench ]]; then _drybench "$@"; else compdef _drybench drybench; fi
`;

const fish = `# drybench in fish: words that fit, at a press of Tab. In ~/.config/fish/config.fish:
#   drybench completion fish | source
function __drybench_offer
    set -l word (commandline -ct)
    for offered in (drybench offer -- (commandline -cp | string collect) 2>/dev/null)
        switch $offered
            case ':file*'
                __fish_complete_path $word
            case ':folder*'
                __fish_complete_directories $word
            case '*'
                echo $offered
        end
    end
end
complete -c drybench -f -k -a '(__drybench_offer)'
`;

const scripts = { bash, zsh, fish };

export type Shell = keyof typeof scripts;

export const shells: readonly Shell[] = ['bash', 'zsh', 'fish'];

export const scriptFor = (shell: Shell): string => scripts[shell];
