// SPDX-License-Identifier: GPL-3.0-or-later
// A folder that only this user can enter, removed at the end with what is in it.
#pragma once

#include <memory>
#include <string>
#include <utility>

#include "core/problems/problem.h"

namespace soakwright::evidence {

class PrivateFolder {
 public:
  static Result<std::shared_ptr<const PrivateFolder>> make();
  ~PrivateFolder();
  PrivateFolder(const PrivateFolder&) = delete;
  PrivateFolder& operator=(const PrivateFolder&) = delete;
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  explicit PrivateFolder(std::string path) : path_(std::move(path)) {}
  std::string path_;
};

/// That a file cannot be written there.
Problem cannot_write_privately(const std::string& path);

}  // namespace soakwright::evidence
