// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/text_file_problems.h"

namespace soakwright::text_file_problems {
namespace {

Problem cannot_open(const std::string& path, std::string what, std::string help) {
  return {ProblemKind::cannot_open, path, 0, std::move(what), std::move(help)};
}

}  // namespace

Problem empty_path() { return cannot_open({}, "the name of a file is empty", "give its path"); }

Problem no_such_file(const std::string& path) {
  return cannot_open(path, "there is no such file", "check the path and the spelling");
}

Problem not_permitted(const std::string& path) {
  return cannot_open(path, "the file may not be read", "check its permissions");
}

Problem not_readable(const std::string& path) {
  return cannot_open(path, "the file cannot be read", "check the path and the disk");
}

Problem is_folder(const std::string& path) {
  return cannot_open(path, "this is a folder", "name the file in it");
}

Problem pipe_or_device(const std::string& path) {
  return cannot_open(path, "this is a pipe or a device, not a file", "save the text to a file and name that");
}

Problem far_too_large(const std::string& path) {
  return {ProblemKind::bad_input, path, 0, "the file is larger than 16 MB",
          "a procedure, job or review is a few kilobytes of TOML; is this the log?"};
}

}  // namespace soakwright::text_file_problems
