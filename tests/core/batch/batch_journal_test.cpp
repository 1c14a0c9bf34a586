// SPDX-License-Identifier: GPL-3.0-or-later
// The journal gives back what was put in, whatever the end of the program cut off. Common practice, no
// source.
#include "core/batch/batch_journal.h"

#include <filesystem>
#include <fstream>
#include <iterator>

#include <catch2/catch.hpp>

using namespace soakwright;
namespace fs = std::filesystem;
using Found = BatchJournal::Found;

namespace {

class JournalPlace {
 public:
  JournalPlace() {
    std::string name = (fs::temp_directory_path() / "soakwright-journal-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    folder_ = name;
  }
  ~JournalPlace() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  JournalPlace(const JournalPlace&) = delete;
  JournalPlace& operator=(const JournalPlace&) = delete;
  [[nodiscard]] std::string path() const { return (folder_ / "r.jsonl.journal").string(); }
  [[nodiscard]] std::string bytes() const {
    std::ifstream file(path(), std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  void write(const std::string& text) const { std::ofstream(path(), std::ios::binary) << text; }

 private:
  fs::path folder_;
};

JournalEntry entry(const std::string& key) {
  JournalEntry one;
  one.key = key;
  one.stamp = "1 2 3";
  one.row = {key, "", Verdict::not_met, 7, 4, 2, 1, "stage-1.spread", "TC1 was\n12:hotter", {"a; b", ""}, 1};
  one.json = "{\"log\": \"" + key + "\"}\n";
  one.csv = key + ",,\n";
  return one;
}

BatchJournal opened(const std::string& path, bool resume, const std::string& settings = "s") {
  auto journal = BatchJournal::open(path, settings, resume);
  REQUIRE(journal.ok());
  return std::move(journal).value();
}

}  // namespace

TEST_CASE("an entry of the journal comes back as it was") {
  const JournalPlace place;
  BatchJournal journal = opened(place.path(), false);
  CHECK(journal.found() == Found::nothing);
  static_cast<void>(journal.append(entry("a.csv")));
  const auto at = journal.append(entry("b.csv"));
  REQUIRE(at.ok());
  const auto back = journal.read(at.value());
  REQUIRE(back.ok());
  const JournalEntry expected = entry("b.csv");
  CHECK(back.value().key == expected.key);
  CHECK(back.value().stamp == expected.stamp);
  CHECK(back.value().json == expected.json);
  CHECK(back.value().csv == expected.csv);
  CHECK(back.value().row.verdict == Verdict::not_met);
  CHECK(back.value().row.requirements == 7);
  CHECK(back.value().row.inconclusive == 1);
  CHECK(back.value().row.worst_text == expected.row.worst_text);
  CHECK(back.value().row.problems == expected.row.problems);
  CHECK(back.value().row.exit_code == 1);
}

TEST_CASE("of a journal cut at any byte each whole entry is kept, and what is added then is whole") {
  const JournalPlace place;
  std::vector<std::size_t> ends;
  {
    BatchJournal journal = opened(place.path(), false);
    ends.push_back(place.bytes().size());
    for (const char* key : {"a.csv", "b.csv", "c.csv"}) {
      static_cast<void>(journal.append(entry(key)));
      ends.push_back(place.bytes().size());
    }
  }
  const std::string whole = place.bytes();
  for (std::size_t cut = 0; cut <= whole.size(); ++cut) {
    place.write(whole.substr(0, cut));
    const std::size_t kept = static_cast<std::size_t>(
        std::count_if(ends.begin() + 1, ends.end(), [&](std::size_t end) { return end <= cut; }));
    {
      BatchJournal journal = opened(place.path(), true);
      INFO(cut);
      REQUIRE(journal.kept().size() == kept);
      static_cast<void>(journal.append(entry("z.csv")));
    }
    REQUIRE(opened(place.path(), true).kept().size() == kept + 1);
  }
}

TEST_CASE("a byte that changed in the journal ends what is kept of it") {
  const JournalPlace place;
  {
    BatchJournal journal = opened(place.path(), false);
    for (const char* key : {"a.csv", "b.csv"}) static_cast<void>(journal.append(entry(key)));
  }
  std::string bytes = place.bytes();
  bytes[bytes.rfind("b.csv")] = 'x';
  place.write(bytes);
  const BatchJournal journal = opened(place.path(), true);
  CHECK(journal.found() == Found::damaged_end);
  CHECK(journal.kept().size() == 1);
}

TEST_CASE("a journal of other settings, or without resuming, begins anew") {
  const JournalPlace place;
  static_cast<void>(opened(place.path(), false).append(entry("a.csv")));
  CHECK(opened(place.path(), true).kept().size() == 1);
  {
    const BatchJournal other = opened(place.path(), true, "t");
    CHECK(other.found() == Found::other_batch);
    CHECK(other.kept().empty());
  }
  static_cast<void>(opened(place.path(), false, "t").append(entry("a.csv")));
  CHECK(opened(place.path(), false, "t").kept().empty());
  CHECK(opened(place.path(), true, "t").kept().empty());
}

TEST_CASE("a second run is kept from a journal that is being written") {
  const JournalPlace place;
  const BatchJournal first = opened(place.path(), false);
  const auto second = BatchJournal::open(place.path(), "s", true);
  REQUIRE_FALSE(second.ok());
  CHECK(second.problems().front().kind == ProblemKind::cannot_write);
  CHECK(second.problems().front().what == "another run of the program is writing here");
}

TEST_CASE("a journal without a name works the same and leaves nothing") {
  BatchJournal journal = opened("", false);
  const auto at = journal.append(entry("a.csv"));
  REQUIRE(at.ok());
  CHECK(journal.read(at.value()).value().key == "a.csv");
}
