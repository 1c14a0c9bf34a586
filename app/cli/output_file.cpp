#include "app/cli/output_file.h"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <system_error>

#ifndef _WIN32
#include <unistd.h>
#endif

namespace soakwright {
namespace {

namespace fs = std::filesystem;

Problem cannot_write(const std::string& path, const std::string& why) {
  return {ProblemKind::cannot_write, path, 0, "cannot be written: " + why,
          "name a file in a folder that exists and may be written to"};
}

std::string last_error() { return std::strerror(errno); }

/// Where `path` leads, over symbolic links, also to a file that is not there yet.
std::optional<fs::path> followed(fs::path path) {
  constexpr int kLinksAtMost = 40;
  std::error_code error;
  for (int links = 0; links < kLinksAtMost; ++links) {
    if (!fs::is_symlink(fs::symlink_status(path, error))) return path;
    const fs::path target = fs::read_symlink(path, error);
    if (error) return std::nullopt;
    path = path.parent_path() / target;
  }
  return std::nullopt;
}

bool write_all(std::FILE* file, std::string_view text) {
  return std::fwrite(text.data(), 1, text.size(), file) == text.size() && std::fflush(file) == 0;
}

/// Onto the disk, before the name changes hands.
bool settle_on_disk([[maybe_unused]] std::FILE* file) {
#ifdef _WIN32
  return true;
#else
  return fsync(fileno(file)) == 0 || errno == EINVAL || errno == EROFS;
#endif
}

std::optional<Problem> write_directly(const std::string& path, std::string_view text) {
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return cannot_write(path, last_error());
  const bool written = write_all(file, text);
  std::string why = written ? "" : last_error();
  if (std::fclose(file) != 0 && written) why = last_error();
  if (!why.empty()) return cannot_write(path, why);
  return std::nullopt;
}

/// Opens a file that was not there before, in the folder of `target`.
std::FILE* open_beside(const fs::path& target, fs::path& temporary) {
  constexpr int kNamesAtMost = 100;
  for (int i = 0; i < kNamesAtMost; ++i) {
    std::string name = target.filename().string();
    name.append(".part").append(std::to_string(i));
    temporary = target.parent_path() / name.insert(0, 1, '.');
    std::FILE* file = std::fopen(temporary.string().c_str(), "wbx");
    if (file != nullptr || errno != EEXIST) return file;
  }
  return nullptr;
}

/// An existing file that may not be written to is not replaced either, although its folder would allow it.
bool may_be_replaced(const fs::path& target) {
  std::FILE* file = std::fopen(target.string().c_str(), "r+b");
  if (file == nullptr) return false;
  std::fclose(file);
  return true;
}

}  // namespace

std::optional<Problem> write_file_whole(const std::string& path, std::string_view text) {
  const auto target = followed(path);
  if (!target) return cannot_write(path, "its symbolic links lead nowhere");
  std::error_code error;
  const fs::file_status status = fs::status(*target, error);
  if (fs::is_directory(status)) return cannot_write(path, "it is a folder");
  if (fs::exists(status) && !fs::is_regular_file(status)) return write_directly(path, text);
  if (fs::exists(status) && !may_be_replaced(*target)) return cannot_write(path, last_error());

  fs::path temporary;
  std::FILE* file = open_beside(*target, temporary);
  if (file == nullptr) return cannot_write(path, last_error());
  const bool written = write_all(file, text) && settle_on_disk(file);
  std::string why = written ? "" : last_error();
  if (std::fclose(file) != 0 && written) why = last_error();
  if (why.empty()) {
    if (fs::exists(status)) fs::permissions(temporary, status.permissions(), error);
    fs::rename(temporary, *target, error);
    if (error) why = error.message();
  }
  if (why.empty()) return std::nullopt;
  fs::remove(temporary, error);
  return cannot_write(path, why);
}

std::optional<Problem> write_standard_output(std::string_view text) {
  if (write_all(stdout, text)) return std::nullopt;
  return cannot_write("standard output", last_error());
}

}  // namespace soakwright
