// SPDX-License-Identifier: GPL-3.0-or-later
// What a table of a TOML file is called in messages.
#pragma once

#include <string>
#include <utility>

#include "core/units/word_table.h"

namespace soakwright {

/// The kinds of our files, each with a version line: `soakwright = "procedure 1"`.
enum class TomlFileKind { procedure, job, review, rule };
inline constexpr auto kFileKindWords = word_table<TomlFileKind::rule>("procedure", "job", "review", "rule");

/// A table by its header or key as it is written in the file, or by what it is.
struct TableName {
  enum class Kind {
    written,
    procedure,
    job,
    review,
    rule,
    stage,
    heat_stage,
    hold_stage,
    cool_stage,
    maintain_stage,
    given_hold,
    composition,
  };
  TableName(Kind a_kind) : kind(a_kind) {}                           // NOLINT: implicit on purpose
  TableName(std::string header) : written(std::move(header)) {}      // NOLINT
  TableName(const char* header) : TableName(std::string{header}) {}  // NOLINT
  /// The top of a file.
  static TableName top_of(TomlFileKind file) {
    switch (file) {
      case TomlFileKind::procedure:
        return Kind::procedure;
      case TomlFileKind::job:
        return Kind::job;
      case TomlFileKind::review:
        return Kind::review;
      case TomlFileKind::rule:
        break;
    }
    return Kind::rule;
  }

  Kind kind = Kind::written;
  std::string written;  ///< `[import]`, `[[weld]]`, `rate_max`; only of that kind
};

}  // namespace soakwright
