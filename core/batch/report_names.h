// SPDX-License-Identifier: GPL-3.0-or-later
// The names of the reports of a batch: no two records have the same one, also on file systems that take
// capital and small letters for the same.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace soakwright {

/// FNV-1a, 64 bits (draft-eastlake-fnv): the same on every machine.
std::uint64_t name_hash(std::string_view text);

struct ReportSubject {
  std::string log;  ///< path, from the folder that the user named, or as the user named it
  std::string job;  ///< the same; empty where there is none
};

/// For each its path within the folder of reports: the log's path with `.pdf` behind the whole name, before
/// it the job's name where it is another one. Where two come to the same, a hash of both paths is added.
std::vector<std::string> report_names(const std::vector<ReportSubject>& subjects);

}  // namespace soakwright
