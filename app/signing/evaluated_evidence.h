// SPDX-License-Identifier: GPL-3.0-or-later
// Evaluates the files that were inside a report, and nothing else: they are written into a private folder for
// it, which is gone afterwards.
#pragma once

#include <memory>
#include <string>

#include "app/evidence/evidence_reader.h"
#include "core/analyse.h"
#include "core/problems/problem.h"

namespace soakwright::signing {

/// A folder that only this user can enter, removed at the end with what is in it.
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

struct EvaluatedEvidence {
  std::shared_ptr<const PrivateFolder> folder;  ///< the analysis names its files
  Analysis analysis;
  std::string company_picture;  ///< where it was put; empty where there is none inside
};

/// With the settings that the report states. What the core says against the files comes back as it is.
Result<EvaluatedEvidence> evaluate_evidence(const evidence::TakenEvidence& taken);

}  // namespace soakwright::signing
