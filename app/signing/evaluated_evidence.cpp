// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/evaluated_evidence.h"

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <system_error>
#include <utility>
#include <vector>

namespace soakwright::signing {
namespace {

namespace fs = std::filesystem;
using Kind = AttachedFile::Kind;

Problem cannot_write(const std::string& path) {
  return {ProblemKind::cannot_write, path, 0, "a file cannot be written for the evaluation",
          "free some space in the folder for temporary files"};
}

/// Where each file was put, in their order. Each has a folder of its own, so that it keeps its name.
Result<std::vector<std::string>> put_files(const evidence::TakenEvidence& taken, const std::string& folder) {
  std::vector<std::string> paths;
  for (std::size_t i = 0; i < taken.files.size(); ++i) {
    const AttachedFile& file = taken.files[i];
    const fs::path own = fs::path(folder) / std::to_string(i);
    std::error_code error;
    if (!fs::create_directory(own, error)) return cannot_write(own.string());
    paths.push_back((own / file.name).string());
    std::ofstream out(paths.back(), std::ios::binary);
    out.write(file.bytes.data(), static_cast<std::streamsize>(file.bytes.size()));
    if (!out.flush()) return cannot_write(paths.back());
  }
  return paths;
}

Request request_for(const evidence::TakenEvidence& taken, const std::vector<std::string>& paths) {
  Request request;
  request.dates = taken.dates;
  request.previous_files.emplace();
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const AttachedFile& file = taken.files[i];
    const bool previous = file.kind == Kind::previous_log || file.kind == Kind::previous_job;
    if (previous && file.previous < taken.files.size() && request.previous_files->size() <= file.previous)
      request.previous_files->resize(file.previous + 1);
    switch (file.kind) {
      case Kind::log:
        request.log = paths[i];
        break;
      case Kind::procedure:
        request.procedure = paths[i];
        break;
      case Kind::job:
        request.job = paths[i];
        break;
      case Kind::review:
        request.review = paths[i];
        break;
      case Kind::previous_log:
        if (file.previous < request.previous_files->size())
          (*request.previous_files)[file.previous].log = paths[i];
        break;
      case Kind::previous_job:
        if (file.previous < request.previous_files->size())
          (*request.previous_files)[file.previous].job = paths[i];
        break;
      case Kind::result:
      case Kind::picture:
        break;
    }
  }
  return request;
}

}  // namespace

Result<std::shared_ptr<const PrivateFolder>> PrivateFolder::make() {
  std::error_code error;
  const fs::path place = fs::temp_directory_path(error);
  std::random_device random;
  for (int attempt = 0; !error && attempt < 100; ++attempt) {
    const fs::path path = place / ("soakwright-" + std::to_string(random()) + std::to_string(random()));
    // A folder that is there already is somebody else's.
    if (!fs::create_directory(path, error) || error) continue;
    fs::permissions(path, fs::perms::owner_all, error);
    if (!error) return std::shared_ptr<const PrivateFolder>(new PrivateFolder(path.string()));
  }
  return cannot_write(place.string());
}

PrivateFolder::~PrivateFolder() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

Result<EvaluatedEvidence> evaluate_evidence(const evidence::TakenEvidence& taken) {
  auto folder = PrivateFolder::make();
  if (!folder) return folder.problems();
  const auto paths = put_files(taken, folder.value()->path());
  if (!paths) return paths.problems();
  const Request request = request_for(taken, paths.value());
  auto analysis = request.procedure.empty() ? inspect(request) : check(request);
  if (!analysis) return analysis.problems();
  EvaluatedEvidence evaluated{std::move(folder).value(), std::move(analysis).value(), {}};
  for (std::size_t i = 0; i < paths.value().size(); ++i)
    if (taken.files[i].kind == Kind::picture) evaluated.company_picture = paths.value()[i];
  return evaluated;
}

}  // namespace soakwright::signing
