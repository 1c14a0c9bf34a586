// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/report_names.h"

#include <cctype>
#include <cstdio>
#include <filesystem>
#include <unordered_map>

namespace soakwright {
namespace {

namespace fs = std::filesystem;

/// Names on a disk have 255 bytes at most; `.pdf` and a hash need room.
constexpr std::size_t kLongestName = 200;

std::string hash_text(std::string_view text) {
  char digits[17];
  std::snprintf(digits, sizeof digits, "%016llx", static_cast<unsigned long long>(name_hash(text)));
  return digits;
}

std::string both(const ReportSubject& subject) { return subject.log + '\0' + subject.job; }

/// Within the folder of reports, whatever the path: no root, no way up.
std::string plain_name(const ReportSubject& subject) {
  const fs::path log(subject.log);
  fs::path name;
  for (const fs::path& piece : log.parent_path().relative_path())
    name /= piece == ".." ? fs::path("__") : piece;
  std::string last = log.filename().string();
  const fs::path job(subject.job);
  if (!subject.job.empty() && job.stem() != log.stem()) last += '.' + job.stem().string();
  if (last.size() > kLongestName) last = last.substr(0, kLongestName) + '-' + hash_text(both(subject));
  return (name / last).string();
}

std::string folded(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x80U)
      c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

}  // namespace

std::uint64_t name_hash(std::string_view text) {
  std::uint64_t hash = 14695981039346656037U;
  for (const char byte : text) {
    hash ^= static_cast<unsigned char>(byte);
    hash *= 1099511628211U;
  }
  return hash;
}

std::vector<std::string> report_names(const std::vector<ReportSubject>& subjects) {
  std::vector<std::string> names;
  names.reserve(subjects.size());
  std::unordered_map<std::string, std::size_t> times;
  for (const ReportSubject& subject : subjects) {
    names.push_back(plain_name(subject));
    ++times[folded(names.back())];
  }
  for (std::size_t i = 0; i < subjects.size(); ++i) {
    if (times[folded(names[i])] > 1) names[i] += '-' + hash_text(both(subjects[i]));
    names[i] += ".pdf";
  }
  return names;
}

}  // namespace soakwright
