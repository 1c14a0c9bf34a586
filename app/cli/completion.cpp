// SPDX-License-Identifier: GPL-3.0-or-later
// Of each shell's own rules only the plainest are used: bash's `complete -F` with compgen, zsh's _arguments,
// fish's `complete`.
#include <algorithm>
#include <string_view>

#include "app/cli/option_table.h"

namespace soakwright::cli {
namespace {

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string out;
  for (const std::string& word : words) {
    if (!out.empty()) out += between;
    out += word;
  }
  return out;
}

std::vector<std::string> names_of(const std::vector<OptionWords>& options) {
  std::vector<std::string> names;
  for (const OptionWords& option : options)
    names.insert(names.end(), option.names.begin(), option.names.end());
  return names;
}

std::vector<std::string> command_names(const std::vector<CommandWords>& commands) {
  std::vector<std::string> names;
  for (const CommandWords& command : commands)
    if (!command.name.empty()) names.push_back(command.name);
  return names;
}

bool is_folder(const std::string& value) { return value == "FOLDER"; }
bool is_file(const std::string& value) { return value.starts_with("FILE"); }

/// In single quotes, as all three shells read them; `quote` is how a quote itself is written there.
std::string quoted(std::string_view text, std::string_view quote) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'')
      out += quote;
    else
      out += c == '\n' ? ' ' : c;
  }
  return out + '\'';
}

/// In zsh's _arguments brackets and colons end a text.
std::string for_zsh(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::string zsh_action(const OptionWords& option) {
  if (option.value.empty()) return "";
  const std::vector<std::string> choices = option.choices();
  std::string what(1, ':');
  what.append(for_zsh(option.value)).append(1, ':');
  if (!choices.empty()) return what + "(" + joined(choices, " ") + ")";
  if (is_folder(option.value)) return what + "_files -/";
  return is_file(option.value) ? what + "_files" : what;
}

}  // namespace

std::vector<std::string> OptionWords::choices() const {
  std::vector<std::string> words;
  if (value.find('|') == std::string::npos || value.find('.') != std::string::npos) return words;
  for (std::size_t at = 0; at <= value.size();) {
    const std::size_t end = std::min(value.find('|', at), value.size());
    words.push_back(value.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

std::string bash_completion(const std::vector<CommandWords>& commands) {
  std::string out =
      "# bash completion for soakwright\n_soakwright() {\n  local word=${COMP_WORDS[COMP_CWORD]} "
      "before=${COMP_WORDS[COMP_CWORD-1]}\n  COMPREPLY=()\n";
  out += "  case \"$COMP_CWORD:${COMP_WORDS[1]}\" in\n";
  for (const CommandWords& command : commands)
    if (command.name.empty())
      out += "    1:*) COMPREPLY=($(compgen -W \"" + joined(command_names(commands), " ") + ' ' +
             joined(names_of(command.options), " ") + "\" -- \"$word\")); return ;;\n";
  for (const CommandWords& command : commands) {
    if (command.name.empty()) continue;
    out += "    *:" + command.name + ")\n      case $before in\n";
    for (const OptionWords& option : command.options) {
      if (option.value.empty()) continue;
      const std::vector<std::string> choices = option.choices();
      const std::string how = !choices.empty()          ? "-W \"" + joined(choices, " ") + "\""
                              : is_folder(option.value) ? std::string("-d")
                              : is_file(option.value)   ? std::string("-f")
                                                        : std::string("-W \"\"");
      out += "        " + joined(option.names, "|") + ") COMPREPLY=($(compgen " + how +
             " -- \"$word\")); return ;;\n";
    }
    out += "      esac\n      if [[ $word == -* ]]; then\n        COMPREPLY=($(compgen -W \"" +
           joined(names_of(command.options), " ") +
           "\" -- \"$word\"))\n      else\n        COMPREPLY=($(compgen -f -- \"$word\"))\n      fi ;;\n";
  }
  return out + "  esac\n}\ncomplete -o filenames -F _soakwright soakwright\n";
}

std::string zsh_completion(const std::vector<CommandWords>& commands) {
  std::string out = "#compdef soakwright\nlocal -a commands\ncommands=(\n";
  for (const CommandWords& command : commands)
    if (!command.name.empty())
      out += "  " + quoted(command.name + ":" + for_zsh(command.about), "'\\''") + '\n';
  out += ")\nif (( CURRENT == 2 )); then\n  _describe command commands\n  return\nfi\ncase ${words[2]} in\n";
  for (const CommandWords& command : commands) {
    if (command.name.empty()) continue;
    out += "  " + command.name + ")\n    shift words; (( CURRENT-- ))\n    _arguments";
    for (const OptionWords& option : command.options)
      for (const std::string& name : option.names)
        out += " \\\n      " + quoted(name + "[" + for_zsh(option.about) + "]" + zsh_action(option), "'\\''");
    for (const ArgumentWords& argument : command.arguments)
      out += " \\\n      " + quoted("*:" + for_zsh(argument.name) + ":_files", "'\\''");
    out += " ;;\n";
  }
  return out + "esac\n";
}

std::string fish_completion(const std::vector<CommandWords>& commands) {
  const std::string program = "complete -c soakwright";
  std::string out = "# fish completion for soakwright\n";
  for (const CommandWords& command : commands)
    if (!command.name.empty())
      out += program + " -n __fish_use_subcommand -f -a " + command.name + " -d " +
             quoted(command.about, "\\'") + '\n';
  for (const CommandWords& command : commands) {
    const std::string when = command.name.empty() ? std::string(" -n __fish_use_subcommand")
                                                  : " -n '__fish_seen_subcommand_from " + command.name + "'";
    for (const OptionWords& option : command.options) {
      out += program + when;
      for (const std::string& name : option.names)
        out += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
      const std::vector<std::string> choices = option.choices();
      if (!choices.empty())
        out += " -x -a " + quoted(joined(choices, " "), "\\'");
      else if (!option.value.empty())
        out += is_file(option.value) || is_folder(option.value) ? " -r" : " -x";
      out += " -d " + quoted(option.about, "\\'") + '\n';
    }
  }
  return out;
}

}  // namespace soakwright::cli
