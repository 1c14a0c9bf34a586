// SPDX-License-Identifier: GPL-3.0-or-later
#include <string_view>

#include "app/cli/option_table.h"

namespace soakwright::cli {
namespace {

/// Text as roff reads it: nothing in it is a request, a hyphen is a hyphen.
std::string roff(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else
      out += c;
    if (c == '\n') out += "";
  }
  if (!out.empty() && (out.front() == '.' || out.front() == '\'')) out.insert(0, "\\&");
  return out;
}

/// The first words of a text that is about to become a sentence.
std::string sentence(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  if (!text.empty() && text.back() != '.') text += '.';
  return text;
}

std::string one_line(std::string text) {
  for (char& c : text)
    if (c == '\n') c = ' ';
  return text;
}

void add_option(std::string& out, const OptionWords& option) {
  out += ".TP\n";
  for (std::size_t i = 0; i < option.names.size(); ++i)
    out += (i == 0 ? "\\fB" : ", \\fB") + roff(option.names[i]) + "\\fR";
  if (!option.value.empty()) out += " \\fI" + roff(option.value) + "\\fR";
  out += '\n' + roff(sentence(one_line(option.about))) + '\n';
}

}  // namespace

std::string manual_page(const std::vector<CommandWords>& commands, const std::string& version) {
  std::string out =
      ".\\\" Made from the options of the program.\n.TH SOAKWRIGHT 1 \"\" \"soakwright " + roff(version) +
      "\" \"User Commands\"\n.SH NAME\nsoakwright \\- whether a heat treatment met its procedure\n"
      ".SH SYNOPSIS\n";
  for (const CommandWords& command : commands) {
    if (command.name.empty()) continue;
    out += ".B soakwright " + command.name + "\n.RI [ OPTION .\\|.\\|.]";
    for (const ArgumentWords& argument : command.arguments) out += " [ " + argument.name + " .\\|.\\|.]";
    out += "\n.br\n";
  }
  out += ".SH DESCRIPTION\n";
  for (const CommandWords& command : commands)
    if (command.name.empty()) out += roff(one_line(command.about)) + '\n';
  for (const CommandWords& command : commands) {
    if (command.name.empty()) continue;
    out += ".SH \"soakwright " + command.name + "\"\n" + roff(sentence(one_line(command.about))) + '\n';
    for (const ArgumentWords& argument : command.arguments)
      out += ".TP\n\\fI" + roff(argument.name) + "\\fR\n" + roff(sentence(one_line(argument.about))) + '\n';
    for (const OptionWords& option : command.options) add_option(out, option);
  }
  out += ".SH \"EXIT STATUS\"\n" + roff(one_line(exit_codes_text())) + '\n';
  out += ".SH ENVIRONMENT\n.TP\n\\fBNO_COLOR\\fR\nWhere it is set, nothing is coloured.\n";
  return out;
}

}  // namespace soakwright::cli
