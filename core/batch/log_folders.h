// SPDX-License-Identifier: GPL-3.0-or-later
// What lies in the folders of a batch: logs, TOML files, and what cannot be looked into.
//
// 1. each folder named, with all folders in it, in the order of their names
// 2. then the folders that symbolic links lead to, unless they were read already
//
// Each folder is read once, by whatever names and links it is reached: a loop ends there. Names that begin
// with a dot are left out unless the user named them.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/problems/problem.h"

namespace soakwright {

struct FoundFile {
  std::string path;  ///< the folder as the user named it, and the way from there
  std::string name;  ///< the way from that folder alone
};

struct UnreadablePlace {
  FoundFile place;
  Problem problem;
};

struct FolderContents {
  std::vector<FoundFile> logs;
  std::vector<FoundFile> toml_files;
  std::vector<UnreadablePlace> unreadable;           ///< folders, and links that lead nowhere
  std::map<std::string, std::size_t> other_endings;  ///< files that are neither, by the ending of their names
  Problems notes;                                    ///< what was left out and why: `kind` means nothing
};

/// What a user names must be a folder: else the problem.
Result<FolderContents> contents_of(const std::vector<std::string>& folders);

/// By the ending of the name, in any case: .csv .txt .tsv .tab .log .dat .asc .prn
bool has_ending_of_log(std::string_view name);

}  // namespace soakwright
