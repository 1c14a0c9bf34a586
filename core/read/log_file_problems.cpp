// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/log_file_problems.h"

#include <cerrno>
#include <cstring>
#include <utility>

#include <fmt/format.h>

#include "core/problems/bad_input.h"

namespace soakwright::log_file_problems {
namespace {

Problem cannot_open(const std::string& path, std::string what, std::string help) {
  return {ProblemKind::cannot_open, path, 0, std::move(what), std::move(help)};
}

}  // namespace

Problem not_opened(const std::string& path, int error) {
  return cannot_open(path, fmt::format("cannot be opened: {}", std::strerror(error)),
                     error == ENOENT ? "check the path" : "check that it may be read");
}

Problem not_readable(const std::string& path, int error) {
  return cannot_open(path, fmt::format("cannot be read: {}", std::strerror(error)), "");
}

Problem is_folder(const std::string& path) {
  return cannot_open(path, "is a folder, not a log", "name a file in it");
}

Problem pipe_or_device(const std::string& path) {
  return cannot_open(path, "is a pipe or a device, not a file", "save the log to a file and name that");
}

Problem not_read_to_end(const std::string& path) {
  return cannot_open(path, "the file cannot be read to its end", "copy it and try again");
}

Problem became_shorter(const std::string& path) {
  return bad_input(path, 0, "the file became shorter while it was read",
                   "wait until nothing writes to it and try again");
}

Problem too_little_memory(const std::string& path) {
  return {ProblemKind::fault, path, 0, "there is not enough memory to read this file",
          "close other programs, or split the log"};
}

Problem empty_file(const std::string& path) {
  return bad_input(path, 0, "the file is empty", "export the log again");
}

Problem not_text(const std::string& path) {
  return bad_input(path, 1, "this is not text: it is full of zero bytes or control characters",
                   "export the log as text (CSV) from the recorder's program");
}

Problem endless_first_line(const std::string& path) {
  return bad_input(path, 1, "the first line is longer than 16 MiB and has no end",
                   "a log has one line for each time");
}

Problem endless_line(const std::string& path, std::size_t line) {
  return bad_input(path, line, "this line is longer than 16 MiB", "a log has one line for each time");
}

Problem byte_order_mark_of_another_encoding(const std::string& path, TextEncoding given, TextEncoding found) {
  return bad_input(path, 1,
                   fmt::format("the encoding {} was given, but the file begins with the mark of {}",
                               name_of(given), name_of(found)),
                   "take the given encoding back");
}

Problem bytes_of_another_encoding(const std::string& path, TextEncoding given, TextEncoding found) {
  return bad_input(
      path, 1,
      fmt::format("the encoding {} was given, but the file's bytes are {}", name_of(given), name_of(found)),
      "take the given encoding back");
}

Problem not_utf8(const std::string& path, std::size_t line, char byte) {
  return bad_input(path, line,
                   fmt::format("the encoding utf-8 was given, but the byte {:02X} in this line is not UTF-8",
                               static_cast<unsigned>(static_cast<unsigned char>(byte))),
                   "take the given encoding back, and such bytes are read as windows-1252");
}

}  // namespace soakwright::log_file_problems
