// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/pdf_loader.h"

#ifdef _WIN32
#include <windows.h>
#else
#include <dlfcn.h>
#endif

#include <filesystem>
#include <system_error>
#include <utility>

#include "app/cli/program_folder.h"
#include "app/cli/separate_process.h"

namespace soakwright::cli {
namespace {

namespace fs = std::filesystem;

#ifdef _WIN32
constexpr const char* kModule = "soakwright-pdf.dll";

void* open_module(const fs::path& path, std::string& why) {
  HMODULE module = LoadLibraryW(path.c_str());
  if (module == nullptr) why = "error " + std::to_string(GetLastError());
  return reinterpret_cast<void*>(module);
}

void* entry_of(void* module, const char* name) {
  return reinterpret_cast<void*>(GetProcAddress(reinterpret_cast<HMODULE>(module), name));
}
#else
constexpr const char* kModule = "soakwright-pdf.so";

void* open_module(const fs::path& path, std::string& why) {
  void* module = dlopen(path.c_str(), RTLD_NOW | RTLD_LOCAL);
  if (module == nullptr) {
    const char* error = dlerror();
    why = error != nullptr ? error : "no reason given";
  }
  return module;
}

void* entry_of(void* module, const char* name) { return dlsym(module, name); }
#endif

Problem no_pdf(const std::string& why) {
  return {ProblemKind::no_such_part, "", 0, "--report and --chart are not available: " + why,
          "install the report writer of this build, or use --json"};
}

/// What keeps the module from being used; empty if nothing does.
std::string mismatch(void* module, const fs::path& place) {
  const auto layout = reinterpret_cast<PdfModuleLayout*>(entry_of(module, kPdfModuleLayout));
  if (layout == nullptr) return place.string() + " is no report writer of this version";
  const std::string found = layout();
  const std::string expected = pdf_module_layout(SOAKWRIGHT_VERSION);
  if (found != expected)
    return place.string() + " belongs to another build: it is '" + found + "', the program is '" + expected +
           "'";
  return {};
}

std::optional<Problem> call(PdfModuleWrite* entry, const Report& report, const std::string& path) {
  return in_separate_process(path, [&]() -> std::optional<Problem> {
    Problem problem;
    const bool written = entry(&report, &path, &problem);
    return written ? std::nullopt : std::optional(std::move(problem));
  });
}

}  // namespace

std::variant<PdfModule, Problem> PdfModule::open() {
  const fs::path folder = program_folder();
  if (folder.empty()) return no_pdf("the program cannot find its own folder");
  for (const fs::path& place : {folder / kModule, folder / SOAKWRIGHT_MODULES_FROM_PROGRAM / kModule}) {
    std::error_code error;
    if (!fs::exists(place, error)) continue;
    std::string why;
    void* module = open_module(place, why);
    if (module == nullptr) return no_pdf(place.string() + " cannot be loaded: " + why);
    if (const std::string other = mismatch(module, place); !other.empty()) return no_pdf(other);
    auto* const report = reinterpret_cast<PdfModuleWrite*>(entry_of(module, kPdfModuleWriteReport));
    auto* const chart = reinterpret_cast<PdfModuleWrite*>(entry_of(module, kPdfModuleWriteChart));
    if (report == nullptr || chart == nullptr) return no_pdf(place.string() + " is not whole");
    return PdfModule{report, chart};
  }
  return no_pdf("this build has no report writer (" + std::string(kModule) +
                " is neither beside the program nor in " SOAKWRIGHT_MODULES_FROM_PROGRAM ")");
}

std::optional<Problem> PdfModule::write_report(const Report& report, const std::string& path) const {
  return call(report_, report, path);
}

std::optional<Problem> PdfModule::write_chart(const Report& report, const std::string& path) const {
  return call(chart_, report, path);
}

}  // namespace soakwright::cli
