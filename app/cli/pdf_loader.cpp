#include "app/cli/pdf_loader.h"

#ifdef _WIN32
#include <windows.h>
#else
#include <dlfcn.h>
#endif

#include <array>
#include <filesystem>
#include <system_error>

namespace soakwright {
namespace {

namespace fs = std::filesystem;

constexpr const char* kReportEntry = "soakwright_write_report";
constexpr const char* kChartEntry = "soakwright_write_chart";

#ifdef _WIN32
constexpr const char* kModule = "soakwright-pdf.dll";

fs::path program_folder() {
  std::array<wchar_t, 32768> path{};
  const DWORD length = GetModuleFileNameW(nullptr, path.data(), static_cast<DWORD>(path.size()));
  return fs::path(std::wstring(path.data(), length)).parent_path();
}

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

fs::path program_folder() {
  std::error_code error;
  const fs::path program = fs::read_symlink("/proc/self/exe", error);
  return error ? fs::path{} : program.parent_path();
}

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
  return {ProblemKind::no_such_part, "", 0,
          "--report and --chart: this build has no report writer (" + why + ")",
          "build with Qt 6 and SOAKWRIGHT_GUI=ON, or use --json"};
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
    void* report = entry_of(module, kReportEntry);
    void* chart = entry_of(module, kChartEntry);
    if (report == nullptr || chart == nullptr) return no_pdf(place.string() + " is not of this version");
    return PdfModule{reinterpret_cast<Entry>(report), reinterpret_cast<Entry>(chart)};
  }
  return no_pdf(std::string(kModule) +
                " is neither beside the program nor in " SOAKWRIGHT_MODULES_FROM_PROGRAM);
}

std::optional<PdfModule::Failure> PdfModule::call(Entry entry, const Analysis& analysis,
                                                  std::optional<TemperatureUnit> unit,
                                                  const std::string& path) {
  std::array<char, 4096> message{};
  const int fahrenheit = !unit ? -1 : (*unit == TemperatureUnit::fahrenheit ? 1 : 0);
  const int exit_code = entry(&analysis, fahrenheit, path.c_str(), message.data(), message.size());
  if (exit_code == 0) return std::nullopt;
  return Failure{exit_code, message.data()};
}

std::optional<PdfModule::Failure> PdfModule::write_report(const Analysis& analysis,
                                                          std::optional<TemperatureUnit> unit,
                                                          const std::string& path) const {
  return call(report_, analysis, unit, path);
}

std::optional<PdfModule::Failure> PdfModule::write_chart(const Analysis& analysis,
                                                         std::optional<TemperatureUnit> unit,
                                                         const std::string& path) const {
  return call(chart_, analysis, unit, path);
}

}  // namespace soakwright
