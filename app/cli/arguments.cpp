// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/arguments.h"

#include <algorithm>
#include <utility>

#include <CLI/CLI.hpp>

#include "app/cli/option_table.h"
#include "app/cli/options/command_options.h"
#include "app/cli/options/settled_options.h"

namespace soakwright::cli {
namespace {

Reply refusal(ProblemKind kind, const std::string& what, const std::string& help) {
  return {"", Problem{kind, "", 0, what, help}};
}

Reply usage(const CLI::App& app, const std::string& what) {
  const auto commands = app.get_subcommands();  // those that were parsed
  const std::string of = commands.empty() ? "" : commands.front()->get_name() + " ";
  return refusal(ProblemKind::usage, what, "see `soakwright " + of + "--help`");
}

/// The name of an option that was given with nothing in it.
std::optional<std::string> given_empty(const CLI::App& command) {
  for (const CLI::Option* option : command.get_options()) {
    if (option->count() == 0 || option->get_items_expected() == 0) continue;
    const auto& values = option->results();
    if (std::any_of(values.begin(), values.end(), [](const std::string& value) { return value.empty(); }))
      return option->get_name();
  }
  return std::nullopt;
}

std::variant<Arguments, Reply> parse(CLI::App& app, int argc, const char* const* argv) {
  Arguments arguments;
  RawOptions raw;
  describe_commands(app, arguments, raw);
  // CLI11 would only say that a subcommand is missing.
  const std::string first = argc > 1 ? argv[1] : "";
  if (argc < 2) return usage(app, "no command is given");
  const auto is_first = [&](const CLI::App* command) { return command->get_name() == first; };
  if (!first.starts_with('-') && app.get_subcommands(is_first).empty())
    return usage(app, "there is no command '" + first + "'");

  try {
    app.parse(argc, argv);
  } catch (const CLI::CallForVersion&) {
    return Reply{version() + '\n'};
  } catch (const CLI::Success&) {
    return Reply{app.help()};
  } catch (const CLI::ParseError& error) {
    return usage(app, error.what());
  }

  const CLI::App* command = app.get_subcommands().front();
  if (const auto empty = given_empty(*command)) return usage(app, *empty + " has an empty value");
  if (command->get_name() == "sign")
    if (const auto wrong = settle_sign(arguments.signing)) return usage(app, *wrong);
  if (const auto wrong = settle_choices(raw, arguments)) return usage(app, *wrong);
  if (const auto wrong = settle_logs(raw, arguments)) return usage(app, *wrong);
  const auto import = import_choices_of(raw.import);
  if (!import) return Reply{"", import.problems().front()};
  arguments.request.import = import.value();
  const std::string& name = command->get_name();
  arguments.command = name == "inspect"  ? Arguments::Command::inspect
                      : name == "check"  ? Arguments::Command::check
                      : name == "batch"  ? Arguments::Command::batch
                      : name == "sign"   ? Arguments::Command::sign
                      : name == "verify" ? Arguments::Command::verify
                                         : Arguments::Command::draft;
  if (name == "batch")
    if (const auto wrong = settle_batch(raw, arguments)) return usage(app, *wrong);
  if (name != "draft") return arguments;
  if (auto wrong = settle_draft(raw.draft, arguments.request.log, arguments.request.job, raw.dates,
                                arguments.unit, arguments.draft))
    return Reply{"", std::move(*wrong)};
  return arguments;
}

/// Lines of one text on one line.
std::string flat(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

CommandWords words_of(const CLI::App& app, const std::string& name) {
  CommandWords words{name, flat(app.get_description()), {}, {}};
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional()) {
      words.arguments.push_back({option->get_name(), flat(option->get_description())});
      continue;
    }
    OptionWords one;
    for (const std::string& letter : option->get_snames()) one.names.push_back("-" + letter);
    for (const std::string& word : option->get_lnames()) one.names.push_back("--" + word);
    one.value = option->get_items_expected() > 0 ? option->get_type_name() : std::string{};
    one.about = flat(option->get_description());
    words.options.push_back(std::move(one));
  }
  return words;
}

}  // namespace

std::vector<CommandWords> option_table() {
  CLI::App app{kAbout, "soakwright"};
  Arguments arguments;
  RawOptions raw;
  describe_commands(app, arguments, raw);
  std::vector<CommandWords> table{words_of(app, {})};
  for (const CLI::App* command :
       app.get_subcommands([](const CLI::App* one) { return !one->get_group().empty(); }))
    table.push_back(words_of(*command, command->get_name()));
  return table;
}

std::string exit_codes_text() {
  const std::string text = kExitCodes;
  return text.substr(text.find(": ") + 2);
}

std::variant<Arguments, Reply> read_arguments(int argc, const char* const* argv) {
  CLI::App app{kAbout, "soakwright"};
  return parse(app, argc, argv);
}

}  // namespace soakwright::cli
