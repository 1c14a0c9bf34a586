#include "app/cli/arguments.h"

#include <array>
#include <utility>

#include <CLI/CLI.hpp>

namespace soakwright {
namespace {

constexpr int kUsage = static_cast<int>(ProblemKind::usage);
constexpr int kNoSuchPart = static_cast<int>(ProblemKind::no_such_part);

constexpr const char* kAbout =
    "Soakwright reads the log of a heat treatment and holds it against the procedure.\n"
    "A verdict with every number behind it; the governing code and the qualified procedure decide.";

constexpr const char* kExitCodes =
    "Exit codes: 0 done, all met; 1 not met; 2 inconclusive; 64 wrong usage; 65 bad input;\n"
    "66 cannot be opened; 69 this build has no such part; 73 cannot be written.";

/// A command that a later build has: it is known, and refused.
struct Absent {
  const char* name;
  const char* what_it_does;
  const char* instead;
};

constexpr std::array<Absent, 4> kAbsent{{
    {"batch", "evaluate every log of a folder", "evaluate the logs one by one with `soakwright check`"},
    {"sign", "sign a report", "sign the report with your own PDF tool"},
    {"verify", "verify a signed report", "evaluate the log again and compare the results"},
    {"draft", "a procedure from a published rule", "write the procedure by hand, as the README shows"},
}};

/// What the options write into before it is evaluated.
struct Raw {
  std::string dates;
  std::string unit;
};

void add_inspect_options(CLI::App& command, Arguments& arguments, Raw& raw) {
  command.add_option("LOG", arguments.request.log, "the log; else the one that the job names")->type_name("");
  command
      .add_option("--job", arguments.request.job, "the job: what was heated, and where each thermocouple sat")
      ->type_name("FILE");
  command.add_option("--json", arguments.json, "write the result as JSON; - is standard output")
      ->type_name("FILE");
  command.add_option("--chart", arguments.chart, "write a picture of the chart as PNG")->type_name("FILE");
  command
      .add_option("--dates", raw.dates, "the order of day, month and year in the log, where it is not plain")
      ->type_name("dmy|mdy|ymd");
  command.add_option("--unit", raw.unit, "print temperatures in this unit; the JSON is always in C")
      ->type_name("C|F");
}

void add_check_options(CLI::App& command, Arguments& arguments) {
  command
      .add_option("--procedure", arguments.request.procedure,
                  "the procedure: what was asked; else the one that the job names")
      ->type_name("FILE");
  command.add_option("--review", arguments.request.review, "a person's dispositions, printed in the report")
      ->type_name("FILE");
  command.add_option("--report", arguments.report, "write the report as PDF")->type_name("FILE");
}

Reply refusal(int exit_code, const std::string& what, const std::string& help) {
  const Problem problem{static_cast<ProblemKind>(exit_code), "", 0, what, help};
  return {exit_code, "", "soakwright: " + problem.text() + '\n'};
}

Reply usage(const CLI::App& app, const std::string& what) {
  const auto commands = app.get_subcommands();  // those that were parsed
  const std::string of = commands.empty() ? "" : commands.front()->get_name() + " ";
  return refusal(kUsage, what, "see `soakwright " + of + "--help`");
}

/// The name of an option that was given with nothing in it.
std::optional<std::string> given_empty(const CLI::App& command) {
  for (const CLI::Option* option : command.get_options()) {
    if (option->count() > 0 && option->get_items_expected() > 0 && option->results().front().empty())
      return option->get_name();
  }
  return std::nullopt;
}

/// Settles what is a choice of words; says what is wrong with it.
std::optional<std::string> settle(const Raw& raw, Arguments& arguments) {
  if (raw.dates == "dmy")
    arguments.request.dates = DateOrder::dmy;
  else if (raw.dates == "mdy")
    arguments.request.dates = DateOrder::mdy;
  else if (raw.dates == "ymd")
    arguments.request.dates = DateOrder::ymd;
  else if (!raw.dates.empty())
    return "--dates is dmy, mdy or ymd, not '" + raw.dates + "'";
  if (raw.unit == "C")
    arguments.unit = TemperatureUnit::celsius;
  else if (raw.unit == "F")
    arguments.unit = TemperatureUnit::fahrenheit;
  else if (!raw.unit.empty())
    return "--unit is C or F, not '" + raw.unit + "'";
  if (arguments.report == "-") return "a report is a file: --report takes no -";
  if (arguments.chart == "-") return "a picture is a file: --chart takes no -";
  return std::nullopt;
}

std::variant<Arguments, Reply> parse(CLI::App& app, int argc, const char* const* argv) {
  const std::string version = std::string("soakwright ") + SOAKWRIGHT_VERSION;
  app.set_version_flag("--version", version, "print the version and end");
  app.set_help_flag("-h,--help", "print this and end");
  app.get_formatter()->column_width(24);
  app.footer(kExitCodes);
  app.require_subcommand(1);

  Arguments arguments;
  Raw raw;
  CLI::App* inspect =
      app.add_subcommand("inspect", "what was read: columns, units, time, phases, suspects, notices");
  CLI::App* check = app.add_subcommand("check", "the verdict: the log against the procedure");
  add_inspect_options(*inspect, arguments, raw);
  add_inspect_options(*check, arguments, raw);
  add_check_options(*check, arguments);
  for (const Absent& absent : kAbsent)
    app.add_subcommand(absent.name, std::string(absent.what_it_does) + " (not in this build)")
        ->allow_extras();
  for (CLI::App* command : app.get_subcommands(nullptr)) {
    command->set_version_flag("--version", version, "print the version and end");
    command->set_help_flag("-h,--help", "print this and end");
  }

  // CLI11 would only say that a subcommand is missing.
  const std::string first = argc > 1 ? argv[1] : "";
  if (argc < 2) return usage(app, "no command is given");
  const auto is_first = [&](const CLI::App* command) { return command->get_name() == first; };
  if (!first.starts_with('-') && app.get_subcommands(is_first).empty())
    return usage(app, "there is no command '" + first + "'");

  try {
    app.parse(argc, argv);
  } catch (const CLI::CallForVersion&) {
    return Reply{0, version + '\n', ""};
  } catch (const CLI::Success&) {
    return Reply{0, app.help(), ""};
  } catch (const CLI::ParseError& error) {
    return usage(app, error.what());
  }

  for (const Absent& absent : kAbsent) {
    if (app.got_subcommand(absent.name))
      return refusal(kNoSuchPart, std::string(absent.name) + ": this build has no such part", absent.instead);
  }
  const CLI::App* command = app.got_subcommand(inspect) ? inspect : check;
  if (const auto empty = given_empty(*command)) return usage(app, *empty + " was given with nothing in it");
  if (const auto wrong = settle(raw, arguments)) return usage(app, *wrong);
  arguments.command = command == inspect ? Arguments::Command::inspect : Arguments::Command::check;
  return arguments;
}

}  // namespace

std::variant<Arguments, Reply> read_arguments(int argc, const char* const* argv) {
  CLI::App app{kAbout, "soakwright"};
  return parse(app, argc, argv);
}

}  // namespace soakwright
