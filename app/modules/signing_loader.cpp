// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/modules/signing_loader.h"

#include <algorithm>
#include <string>
#include <utility>
#include <variant>

#include "app/modules/module_file.h"
#include "app/modules/one_file.h"

namespace soakwright::modules {
namespace {

ModuleName signing_module_name(const char* wanted) {
  return {"soakwright-signing", wanted,
          "signing module",     "install the signing module of this build",
          kSigningModuleLayout, signing_module_layout(SOAKWRIGHT_VERSION)};
}

}  // namespace

Result<SigningModule> SigningModule::open(const char* wanted, const std::filesystem::path& folder) {
  const ModuleName name = signing_module_name(wanted);
  auto opened = ModuleFile::open(name, folder);
  if (auto* problem = std::get_if<Problem>(&opened)) return std::move(*problem);
  const auto& file = std::get<ModuleFile>(opened);
  SigningModule module;
  module.sign_ = reinterpret_cast<SigningModuleSign*>(file.entry(kSigningModuleSign));
  module.verify_ = reinterpret_cast<SigningModuleVerify*>(file.entry(kSigningModuleVerify));
  if (module.sign_ == nullptr || module.verify_ == nullptr) return ModuleFile::not_whole(name);
  return module;
}

std::optional<Problem> SigningModule::sign(const SignOrder& order, const ReportPrinter& printer) const {
  const std::string& out = order.out.empty() ? order.report : order.out;
  for (const std::string& input : {order.key, order.certificate, order.password_file})
    if (!input.empty() && one_file(out, input))
      return Problem{ProblemKind::usage, out, 0, "this is a file to be read, and would be written over",
                     "name another file"};
  Problem problem;
  if (sign_(&order, &printer, &problem)) return std::nullopt;
  return problem;
}

Result<std::vector<CheckLine>> SigningModule::verify(const VerifyOrder& order, const ReportPrinter& printer,
                                                     const Watch& watch) const {
  Problem problem;
  std::vector<CheckLine> lines;
  const bool found = verify_(&order, &printer, &watch, &lines, &problem);
  if (watch.stopped()) return Problems{};
  if (!found) return problem;
  return lines;
}

const char* state_words(CheckLine::State state) {
  switch (state) {
    case CheckLine::State::holds:
      return "holds";
    case CheckLine::State::fails:
      return "does not hold";
    case CheckLine::State::open:
      return "not shown";
    case CheckLine::State::note:
      break;
  }
  return "note";
}

CheckLine::State state_of_all(const std::vector<CheckLine>& lines) {
  const auto any = [&lines](CheckLine::State state) {
    return std::any_of(lines.begin(), lines.end(),
                       [state](const CheckLine& line) { return line.state == state; });
  };
  if (any(CheckLine::State::fails)) return CheckLine::State::fails;
  return any(CheckLine::State::open) ? CheckLine::State::open : CheckLine::State::holds;
}

}  // namespace soakwright::modules
