// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/placed_files.h"

#include <filesystem>
#include <fstream>
#include <system_error>
#include <utility>
#include <vector>

namespace soakwright::evidence {
namespace {

namespace fs = std::filesystem;
using Kind = AttachedFile::Kind;

/// Where each file was put, in their order. Each has a folder of its own, so that it keeps its name.
Result<std::vector<std::string>> put_files(const TakenEvidence& taken, const std::string& folder) {
  std::vector<std::string> paths;
  for (std::size_t i = 0; i < taken.files.size(); ++i) {
    const AttachedFile& file = taken.files[i];
    const fs::path own = fs::path(folder) / std::to_string(i);
    std::error_code error;
    if (!fs::create_directory(own, error)) return cannot_write_privately(own.string());
    paths.push_back((own / file.name).string());
    std::ofstream out(paths.back(), std::ios::binary);
    out.write(file.bytes.data(), static_cast<std::streamsize>(file.bytes.size()));
    if (!out.flush()) return cannot_write_privately(paths.back());
  }
  return paths;
}

Request request_for(const TakenEvidence& taken, const std::vector<std::string>& paths) {
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

Result<PlacedFiles> place_files(const TakenEvidence& taken) {
  auto folder = PrivateFolder::make();
  if (!folder) return folder.problems();
  const auto paths = put_files(taken, folder.value()->path());
  if (!paths) return paths.problems();
  PlacedFiles placed{std::move(folder).value(), request_for(taken, paths.value()), {}};
  for (std::size_t i = 0; i < paths.value().size(); ++i)
    if (taken.files[i].kind == Kind::picture) placed.company_picture = paths.value()[i];
  return placed;
}

}  // namespace soakwright::evidence
