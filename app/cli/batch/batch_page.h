// SPDX-License-Identifier: GPL-3.0-or-later
// What `batch` prints at its end: a table of the records, what is wrong with which, and how many there are
// of each verdict.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "app/cli/printing/page_text.h"
#include "core/batch.h"

namespace soakwright::cli {

class BatchSummary {
 public:
  /// Of a large batch only the records that are not met are listed.
  explicit BatchSummary(std::size_t records) : all_(records <= kListedAtMost) {}
  void add(const BatchRow& row);
  [[nodiscard]] std::string page(const BatchProgress& progress, const PageStyle& style) const;

  static constexpr std::size_t kListedAtMost = 50;

 private:
  bool all_;
  std::vector<BatchRow> rows_;
};

}  // namespace soakwright::cli
