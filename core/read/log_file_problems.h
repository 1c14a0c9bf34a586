// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a log's file and its bytes, in words.
#pragma once

#include <cstddef>
#include <string>

#include "core/problems/problem.h"
#include "core/read/reading_settings.h"

namespace soakwright::log_file_problems {

/// `error` is the system's errno.
Problem not_opened(const std::string& path, int error);
Problem not_readable(const std::string& path, int error);
Problem is_folder(const std::string& path);
Problem pipe_or_device(const std::string& path);
Problem not_read_to_end(const std::string& path);
/// There are fewer bytes than when the file was opened.
Problem became_shorter(const std::string& path);
Problem too_little_memory(const std::string& path);

Problem empty_file(const std::string& path);
Problem not_text(const std::string& path);
/// The file is one line of more than 16 MiB.
Problem endless_first_line(const std::string& path);
/// More than 16 MiB.
Problem endless_line(const std::string& path, std::size_t line);

Problem byte_order_mark_of_another_encoding(const std::string& path, TextEncoding given, TextEncoding found);
Problem bytes_of_another_encoding(const std::string& path, TextEncoding given, TextEncoding found);
/// UTF-8 was given, and `line` has `byte`.
Problem not_utf8(const std::string& path, std::size_t line, char byte);

}  // namespace soakwright::log_file_problems
