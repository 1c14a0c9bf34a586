// SPDX-License-Identifier: GPL-3.0-or-later
// An entry on disk: `LENGTH HASH\n`, LENGTH bytes, `\n`. Within them fields, each `LENGTH:bytes`. The first
// entry is the settings of the batch.
#include "core/batch/batch_journal.h"

#include <array>
#include <cerrno>
#include <charconv>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <string>
#include <thread>
#include <utility>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/batch/batch_problems.h"
#include "core/batch/report_names.h"
#include "core/system/write_problems.h"

namespace soakwright {
namespace {

constexpr std::size_t kHeadAtMost = 64;
constexpr std::string_view kFormat = "soakwright-journal 1\n";

void add_field(std::string& out, std::string_view field) {
  out += std::to_string(field.size());
  out += ':';
  out += field;
}

void add_number(std::string& out, std::size_t number) { add_field(out, std::to_string(number)); }

/// Takes the next field off the front; false where there is none.
bool take_field(std::string_view& text, std::string_view& field) {
  std::size_t length = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), length);
  if (error != std::errc{} || end == text.data() + text.size() || *end != ':') return false;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()) + 1);
  if (length > text.size()) return false;
  field = text.substr(0, length);
  text.remove_prefix(length);
  return true;
}

std::size_t number_of(std::string_view field) {
  std::size_t number = 0;
  std::from_chars(field.data(), field.data() + field.size(), number);
  return number;
}

constexpr std::size_t kNoVerdict = 9;

std::string packed(const JournalEntry& entry) {
  std::string out;
  add_field(out, entry.key);
  add_field(out, entry.stamp);
  add_number(out, entry.again ? 1 : 0);
  const BatchRow& row = entry.row;
  add_field(out, row.log);
  add_field(out, row.job);
  add_number(out, row.verdict ? static_cast<std::size_t>(*row.verdict) : kNoVerdict);
  for (const std::size_t count : {row.requirements, row.met, row.not_met, row.inconclusive})
    add_number(out, count);
  add_field(out, row.worst);
  add_field(out, row.worst_text);
  add_number(out, static_cast<std::size_t>(row.exit_code));
  add_field(out, entry.json);
  add_field(out, entry.csv);
  for (const std::string& problem : row.problems) add_field(out, problem);
  return out;
}

JournalEntry unpacked(std::string_view text) {
  JournalEntry entry;
  const auto next = [&] {
    std::string_view field;
    take_field(text, field);
    return field;
  };
  entry.key = next();
  entry.stamp = next();
  entry.again = next() == "1";
  BatchRow& row = entry.row;
  row.log = next();
  row.job = next();
  if (const std::size_t verdict = number_of(next()); verdict != kNoVerdict)
    row.verdict = static_cast<Verdict>(verdict);
  for (std::size_t* const count : {&row.requirements, &row.met, &row.not_met, &row.inconclusive})
    *count = number_of(next());
  row.worst = next();
  row.worst_text = next();
  row.exit_code = static_cast<int>(number_of(next()));
  entry.json = next();
  entry.csv = next();
  for (std::string_view problem; take_field(text, problem);) row.problems.emplace_back(problem);
  return entry;
}

std::string framed(std::string_view payload) {
  std::array<char, kHeadAtMost> head{};
  std::snprintf(head.data(), head.size(), "%zu %016llx\n", payload.size(),
                static_cast<unsigned long long>(name_hash(payload)));
  std::string out(head.data());
  out += payload;
  out += '\n';
  return out;
}

/// A journal without a name, for a batch whose outputs are no files.
Descriptor unnamed_file() {
  std::error_code error;
  std::string name = (std::filesystem::temp_directory_path(error) / "soakwright-XXXXXX").string();
  Descriptor file(::mkostemp(name.data(), O_CLOEXEC));
  if (file.open()) ::unlink(name.c_str());
  return file;
}

/// False where another run holds the file. One that was killed a moment ago may still do so. Where the file
/// system cannot lock, nothing is lost but this.
bool locked(const Descriptor& file) {
  constexpr int kTimes = 20;
  for (int i = 0; i < kTimes; ++i) {
    if (::flock(file.number(), LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
  }
  return false;
}

}  // namespace

Result<BatchJournal> BatchJournal::open(const std::string& path, const std::string& settings, bool resume) {
  constexpr mode_t kAsTheUmaskSays = 0666;
  Descriptor file =
      path.empty()
          ? unnamed_file()
          : Descriptor(::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, kAsTheUmaskSays));
  const std::string shown = path.empty() ? unnamed_journal() : path;
  if (!file.open()) return cannot_write(shown, errno);
  if (!path.empty() && !locked(file)) return written_by_another_run(path);
  BatchJournal journal(shown, std::move(file));
  const std::uint64_t keep = journal.load(settings);
  if (!resume) journal.kept_.clear();
  const bool anew = !resume || keep == 0;
  if (::ftruncate(journal.file_.number(), static_cast<off_t>(anew ? 0 : keep)) != 0)
    return cannot_write(shown, errno);
  journal.end_ = anew ? 0 : keep;
  if (!anew) return journal;
  const std::string first = framed(std::string(kFormat) + settings);
  if (::lseek(journal.file_.number(), 0, SEEK_SET) < 0) return cannot_write(shown, errno);
  if (const int error = write_all(journal.file_.number(), first); error != 0)
    return cannot_write(shown, error);
  journal.end_ = first.size();
  return journal;
}

std::uint64_t BatchJournal::load(const std::string& settings) {
  struct stat status {};
  if (::fstat(file_.number(), &status) != 0 || status.st_size <= 0) return 0;
  const auto size = static_cast<std::uint64_t>(status.st_size);
  std::uint64_t at = 0;
  std::string payload;
  bool first = true;
  while (at < size) {
    std::array<char, kHeadAtMost> head{};
    const std::size_t there = static_cast<std::size_t>(std::min<std::uint64_t>(head.size(), size - at));
    if (read_all_at(file_.number(), at, head.data(), there) != 0) break;
    std::size_t length = 0;
    unsigned long long hash = 0;
    const char* const last = head.data() + there;
    const auto [end, error] = std::from_chars(head.data(), last, length);
    if (error != std::errc{} || end == last || *end != ' ') break;
    const auto hashed = std::from_chars(end + 1, last, hash, 16);
    if (hashed.ec != std::errc{} || hashed.ptr == last || *hashed.ptr != '\n') break;
    const std::uint64_t begin = at + static_cast<std::uint64_t>(hashed.ptr + 1 - head.data());
    if (begin > size || length >= size - begin) break;
    payload.resize(length);
    if (read_all_at(file_.number(), begin, payload.data(), length) != 0 || name_hash(payload) != hash) break;
    at = begin + length + 1;
    if (first && payload != std::string(kFormat) + settings) {
      found_ = Found::other_batch;
      return 0;
    }
    if (!first) {
      std::string_view text = payload, key, stamp, again;
      take_field(text, key);
      take_field(text, stamp);
      take_field(text, again);
      kept_.push_back({std::string(key), std::string(stamp), again == "1", {begin, length}});
    }
    first = false;
  }
  found_ = at == size ? Found::whole : Found::damaged_end;
  return at;
}

Result<BatchJournal::Place> BatchJournal::append(const JournalEntry& entry) {
  const std::string payload = packed(entry);
  const std::string text = framed(payload);
  if (::lseek(file_.number(), static_cast<off_t>(end_), SEEK_SET) < 0) return cannot_write(path_, errno);
  if (const int error = write_all(file_.number(), text); error != 0) return cannot_write(path_, error);
  const Place place{end_ + text.size() - payload.size() - 1, payload.size()};
  end_ += text.size();
  return place;
}

Result<JournalEntry> BatchJournal::read(const Place& place) const {
  std::string payload(place.bytes, '\0');
  if (const int error = read_all_at(file_.number(), place.offset, payload.data(), place.bytes); error != 0)
    return cannot_write(path_, error);
  return unpacked(payload);
}

void BatchJournal::remove() {
  ::unlink(path_.c_str());
  static_cast<void>(file_.close());
}

}  // namespace soakwright
