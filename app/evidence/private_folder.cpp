// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/private_folder.h"

#include <filesystem>
#include <random>
#include <system_error>

namespace soakwright::evidence {

namespace fs = std::filesystem;

Problem cannot_write_privately(const std::string& path) {
  return {ProblemKind::cannot_write, path, 0, "a file cannot be written for the evaluation",
          "free some space in the folder for temporary files"};
}

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
  return cannot_write_privately(place.string());
}

PrivateFolder::~PrivateFolder() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

}  // namespace soakwright::evidence
