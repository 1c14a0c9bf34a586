// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/modules/module_file.h"

#ifdef _WIN32
#include <windows.h>
#else
#include <dlfcn.h>
#endif

#include <filesystem>
#include <system_error>
#include <utility>

#include "app/modules/program_folder.h"

namespace soakwright::modules {
namespace {

namespace fs = std::filesystem;

#ifdef _WIN32
constexpr const char* kEnding = ".dll";

void* open_module(const fs::path& path, std::string& why) {
  HMODULE module = LoadLibraryW(path.c_str());
  if (module == nullptr) why = "error " + std::to_string(GetLastError());
  return reinterpret_cast<void*>(module);
}

void* entry_of(void* module, const char* name) {
  return reinterpret_cast<void*>(GetProcAddress(reinterpret_cast<HMODULE>(module), name));
}
#else
constexpr const char* kEnding = ".so";

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

Problem missing(const ModuleName& name, const std::string& why) {
  return {ProblemKind::no_such_part, "", 0, std::string(name.wanted) + " not available: " + why, name.help};
}

/// What keeps the module from being used; empty if nothing does.
std::string mismatch(const ModuleName& name, void* module, const fs::path& place) {
  using Layout = const char*();
  const auto layout = reinterpret_cast<Layout*>(entry_of(module, name.layout));
  if (layout == nullptr) return place.string() + " is no " + name.part + " of this version";
  const std::string found = layout();
  if (found != name.expected)
    return place.string() + " belongs to another build: it is '" + found + "', the program is '" +
           name.expected + "'";
  return {};
}

}  // namespace

std::variant<ModuleFile, Problem> ModuleFile::open(const ModuleName& name, const fs::path& elsewhere) {
  const fs::path folder = elsewhere.empty() ? program_folder() : elsewhere;
  const std::string file = std::string(name.stem) + kEnding;
  if (folder.empty()) return missing(name, "the program cannot find its own folder");
  for (const fs::path& place : {folder / file, folder / SOAKWRIGHT_MODULES_FROM_PROGRAM / file}) {
    std::error_code error;
    if (!fs::exists(place, error)) continue;
    std::string why;
    void* module = open_module(place, why);
    if (module == nullptr) return missing(name, place.string() + " cannot be loaded: " + why);
    if (const std::string other = mismatch(name, module, place); !other.empty()) return missing(name, other);
    return ModuleFile{module};
  }
  return missing(name, "this build has no " + std::string(name.part) + " (" + file +
                           " is neither beside the program nor in " SOAKWRIGHT_MODULES_FROM_PROGRAM ")");
}

void* ModuleFile::entry(const char* name) const { return entry_of(handle_, name); }

Problem ModuleFile::not_whole(const ModuleName& name) {
  return missing(name, std::string(name.stem) + kEnding + " is not whole");
}

}  // namespace soakwright::modules
