// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/log_folders.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <filesystem>
#include <set>
#include <system_error>

#include "core/batch/batch_problems.h"
#include "core/batch/file_stamp.h"

namespace soakwright {
namespace {

namespace fs = std::filesystem;

constexpr std::array<std::string_view, 8> kLogEndings{".csv", ".txt", ".tsv", ".tab",
                                                      ".log", ".dat", ".asc", ".prn"};

std::string ending_of(std::string_view name) {
  std::string ending = fs::path(name).extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(c < 0x80U ? std::tolower(c) : c); });
  return ending;
}

std::string joined(const std::string& folder, const std::string& name) {
  if (folder.empty() || folder == ".") return name;
  return folder.back() == '/' ? folder + name : folder + '/' + name;
}

class Walk {
 public:
  explicit Walk(FolderContents& found) : found_(found) {}

  /// A folder that the user named.
  void named(const std::string& path) {
    if (already_read(path)) {
      found_.notes.push_back(folder_read_already(path));
      return;
    }
    read({path, ""});
  }
  /// Links may lead to folders with further links.
  void follow_links() {
    while (!links_.empty()) {
      std::vector<FoundFile> links;
      links.swap(links_);
      for (const FoundFile& link : links) {
        if (already_read(link.path))
          found_.notes.push_back(link_to_folder_read_already(link.path));
        else
          read(link);
      }
    }
  }

 private:
  bool already_read(const std::string& path) {
    const auto identity = identity_of(path);
    return identity && !folders_.insert(*identity).second;
  }

  void read(const FoundFile& first) {
    std::vector<FoundFile> waiting{first};
    while (!waiting.empty()) {
      const FoundFile folder = std::move(waiting.back());
      waiting.pop_back();
      std::vector<FoundFile> inner = read_one(folder);
      std::sort(inner.begin(), inner.end(), [](const auto& a, const auto& b) { return b.path < a.path; });
      waiting.insert(waiting.end(), inner.begin(), inner.end());
    }
  }

  /// The folders in it that are to be read.
  std::vector<FoundFile> read_one(const FoundFile& folder) {
    std::vector<FoundFile> inner;
    std::error_code error;
    fs::directory_iterator at(folder.path.empty() ? "." : folder.path, error);
    std::vector<FoundFile> links;
    for (; !error && at != fs::directory_iterator{}; at.increment(error)) {
      const std::string name = at->path().filename().string();
      if (name.starts_with('.')) continue;
      const FoundFile place{joined(folder.path, name), joined(folder.name, name)};
      take(*at, place, name, inner, links);
    }
    if (error) found_.unreadable.push_back({folder, folder_cannot_be_read(folder.path, error.message())});
    std::sort(links.begin(), links.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
    links_.insert(links_.end(), links.begin(), links.end());
    return inner;
  }

  void take(const fs::directory_entry& entry, const FoundFile& place, const std::string& name,
            std::vector<FoundFile>& inner, std::vector<FoundFile>& links) {
    std::error_code error;
    const bool link = entry.is_symlink(error);
    const fs::file_status status = entry.status(error);
    if (link && !fs::exists(status)) {
      found_.unreadable.push_back({place, link_leads_nowhere(place.path)});
    } else if (fs::is_directory(status)) {
      if (link)
        links.push_back(place);
      else if (!already_read(place.path))
        inner.push_back(place);
    } else if (has_ending_of_log(name)) {
      found_.logs.push_back(place);
    } else if (ending_of(name) == ".toml") {
      found_.toml_files.push_back(place);
    } else {
      ++found_.other_endings[ending_of(name)];
    }
  }

  FolderContents& found_;
  std::set<FileIdentity> folders_;
  std::vector<FoundFile> links_;
};

/// As the user named it, without what means nothing: `./a//b/` is a/b.
std::string plain_path(const std::string& path) {
  std::string plain = fs::path(path).lexically_normal().string();
  while (plain.size() > 1 && plain.back() == '/') plain.pop_back();
  return plain;
}

}  // namespace

bool has_ending_of_log(std::string_view name) {
  const std::string ending = ending_of(name);
  return std::find(kLogEndings.begin(), kLogEndings.end(), ending) != kLogEndings.end();
}

Result<FolderContents> contents_of(const std::vector<std::string>& folders) {
  Problems problems;
  for (const std::string& folder : folders) {
    std::error_code error;
    const fs::file_status status = fs::status(folder, error);
    if (!fs::exists(status))
      problems.push_back(no_such_folder(folder, error ? error.message() : std::string{}));
    else if (!fs::is_directory(status))
      problems.push_back(not_a_folder(folder));
  }
  if (!problems.empty()) return problems;
  FolderContents found;
  Walk walk(found);
  for (const std::string& folder : folders) walk.named(plain_path(folder));
  walk.follow_links();
  return found;
}

}  // namespace soakwright
