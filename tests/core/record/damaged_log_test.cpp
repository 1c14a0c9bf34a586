// SPDX-License-Identifier: GPL-3.0-or-later
// What no recorder should write and disks give all the same: an error or a record, never a crash, a hang or
// memory without bound. The sanitizers' build runs this too.
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <thread>

#include <catch2/catch.hpp>
#include <sys/stat.h>

#include "core/read/fast/block_reader.h"
#include "core/read/log_head.h"
#include "core/record/record_file.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;
namespace fs = std::filesystem;

namespace {

const std::string kStamped =
    "North bay, \"line 2\"\r\nTime,\"TC1, inside\",TC2,Set point\r\n,\xC2\xB0"
    "C,\xC2\xB0"
    "F,\xC2\xB0"
    "C\r\n"
    "2031-04-02 06:00:00,20.0,68.0,20\r\n2031-04-02 06:01:00,\"21.5\",,25\r\n"
    "2031-04-02 06:01:00,\"21.5\",,25\r\n2031-04-02 06:02:00,OPEN,70.1,30\r\n2031-04-02 "
    "06:05:30,9999,70.4,30\r\n";
const std::string kElapsed =
    "# run 7\nTime (min);1;2\n-0,5;20,0;1e1\n0,0;21,5;1.234\n0,5;---;+12,0\n1,0;\"23,5;13,0\n";

std::string as_utf16(const std::string& text) {
  std::string bytes = "\xFF\xFE";
  for (const char c : text) {
    bytes += c;
    bytes += '\0';
  }
  return bytes;
}

/// Reads it; what is wrong with the outcome, empty where it is an error that says something or a sound
/// record.
std::string fault_in(const std::string& path) {
  const auto read = read_record(path, nullptr);
  if (!read) {
    if (read.problems().empty()) return "an error without a problem";
    for (const Problem& problem : read.problems())
      if (problem.what.empty() || problem.file != path) return "a problem that says too little";
    return {};
  }
  const Record& record = *read.value();
  if (record.rows() < 2) return "fewer than two rows";
  if (record.channels.empty()) return "no channel";
  for (std::size_t row = 1; row < record.rows(); ++row)
    if (!(record.times_s[row] > record.times_s[row - 1])) return "time does not run forward";
  for (const Channel& channel : record.channels)
    if (channel.readings.rows() != record.rows()) return "a channel of another length";
  return {};
}

std::string fault_of(const std::string& bytes) {
  const WrittenLog log{bytes};
  return fault_in(log.path());
}

Problem problem_of(const std::string& path) {
  const auto read = read_record(path, nullptr);
  REQUIRE_FALSE(read.ok());
  return read.problems().front();
}

}  // namespace

TEST_CASE("a log cut at any byte gives an error or a record") {
  for (const std::string& whole : {kStamped, kElapsed, as_utf16(kStamped), as_utf16(kElapsed)}) {
    std::size_t records = 0;
    for (std::size_t length = 0; length <= whole.size(); ++length) {
      INFO("cut behind byte " << length);
      const WrittenLog log{whole.substr(0, length)};
      CHECK(fault_in(log.path()).empty());
      if (read_record(log.path(), nullptr)) ++records;
    }
    CHECK(records > 20);
  }
}

TEST_CASE("zero bytes and bytes of chance anywhere give an error or a record") {
  std::mt19937 random{20310402};
  for (int round = 0; round < 600; ++round) {
    std::string bytes = round % 3 == 0 ? kStamped : round % 3 == 1 ? kElapsed : as_utf16(kElapsed);
    for (unsigned i = 0; i <= random() % 6; ++i)
      bytes[random() % bytes.size()] = round % 2 == 0 ? '\0' : static_cast<char>(random());
    INFO("round " << round);
    CHECK(fault_of(bytes).empty());
  }
}

TEST_CASE("quotes that are never closed end with their line") {
  for (std::size_t at = 0; at <= kElapsed.size(); ++at) {
    std::string bytes = kElapsed;
    bytes.insert(at, 1, '"');
    INFO("a quote at byte " << at);
    CHECK(fault_of(bytes).empty());
  }
  std::string rows = "Time,TC1\n";
  for (int i = 0; i < 5000; ++i) rows.append(std::to_string(i)).append(",\"20.5\n");
  const WrittenLog log{rows};
  const auto read = read_record(log.path(), nullptr);
  REQUIRE(read.ok());
  CHECK(read.value()->rows() == 5000);
  CHECK(read.value()->channels.at(0).readings.celsius(4999) == 20.5);
}

TEST_CASE("a line of 100 MB is refused after its first 16 MiB, wherever it stands") {
  const WrittenLog log{"Time,TC1\n0,20.0\n10,20.5\n20,21.0\n"};
  const std::string megabyte(std::size_t{1} << 20, '7');
  {
    std::ofstream more{log.path(), std::ios::binary | std::ios::app};
    for (int i = 0; i < 100; ++i) more << megabyte;
  }
  const Problem later = problem_of(log.path());
  CHECK(later.kind == ProblemKind::bad_input);
  CHECK(later.line == 5);
  CHECK(later.what.find("longer than 16 MiB") != std::string::npos);

  // The same line at the front.
  {
    std::fstream front{log.path(), std::ios::binary | std::ios::in | std::ios::out};
    front << std::string(64, '7');
  }
  const Problem first = problem_of(log.path());
  CHECK(first.kind == ProblemKind::bad_input);
  CHECK(first.line == 1);
  CHECK(first.what.find("longer than 16 MiB") != std::string::npos);
}

TEST_CASE("10,000 columns are read") {
  constexpr std::size_t kColumns = 10'000;
  std::string bytes = "Time";
  for (std::size_t c = 1; c < kColumns; ++c) bytes.append(",T").append(std::to_string(c));
  for (int row = 0; row < 3; ++row) {
    bytes.append("\n").append(std::to_string(row));
    for (std::size_t c = 1; c < kColumns; ++c) bytes.append(",2").append(std::to_string(row));
  }
  const WrittenLog log{bytes};
  const auto read = read_record(log.path(), nullptr);
  REQUIRE(read.ok());
  CHECK(read.value()->rows() == 3);
  REQUIRE(read.value()->channels.size() == kColumns - 1);
  CHECK(read.value()->channels.back().readings.celsius(2) == 22.0);
}

TEST_CASE("rows that become far shorter than the first ones are refused or read, without more memory") {
  std::string bytes = "Time,TC1,TC2,TC3,TC4,TC5,TC6,TC7\n";
  for (int row = 0; row < 10; ++row)
    bytes.append(std::to_string(row)).append(",20.5,20.5,20.5,20.5,20.5,20.5,20.5\n");
  for (int row = 10; row < 50'000; ++row) bytes += "x\n";
  const WrittenLog log{bytes};
  const Problem problem = problem_of(log.path());
  CHECK(problem.what.find("far shorter") != std::string::npos);
  CHECK(problem.line == 12);
}

TEST_CASE("a pipe, a device and a folder are named as what they are") {
  const fs::path folder = fs::temp_directory_path() / ("soakwright-pipe-" + std::to_string(::getpid()));
  fs::create_directory(folder);
  const std::string pipe = (folder / "pipe").string();
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  for (const std::string& path : {pipe, std::string{"/dev/null"}, std::string{"/dev/zero"}}) {
    const Problem problem = problem_of(path);
    CHECK(problem.kind == ProblemKind::cannot_open);
    CHECK(problem.what.find("a pipe or a device") != std::string::npos);
    CHECK(problem.help.find("save the log to a file") != std::string::npos);
  }
  CHECK(problem_of(folder.string()).what.find("a folder") != std::string::npos);
  fs::remove_all(folder);
}

TEST_CASE("a file that shrinks while it is read is an error that says so") {
  std::string bytes = "Time,TC1\n";
  for (int row = 0; row < 40'000; ++row) bytes.append(std::to_string(row)).append(",20.5\n");
  SECTION("between two blocks") {
    const WrittenLog log{bytes};
    const auto file = SourceFile::open(log.path());
    REQUIRE(file.ok());
    BlockReader blocks{file.value(), log.path(), {TextEncoding::utf_8, 0, '\n', 1, 4096}};
    Block block;
    REQUIRE(blocks.next(block));
    fs::resize_file(log.path(), 10'000);
    while (blocks.next(block)) {
    }
    REQUIRE(blocks.problem().has_value());
    CHECK(blocks.problem()->kind == ProblemKind::bad_input);
    CHECK(blocks.problem()->what.find("became shorter") != std::string::npos);
  }
  SECTION("before its head is read") {
    const WrittenLog log{bytes};
    const auto file = SourceFile::open(log.path());
    REQUIRE(file.ok());
    fs::resize_file(log.path(), 3);
    const auto head = read_head(file.value(), log.path(), {}, 4096);
    REQUIRE_FALSE(head.ok());
    CHECK(head.problems().front().what.find("became shorter") != std::string::npos);
  }
  SECTION("by another hand, at any moment") {
    for (int round = 0; round < 20; ++round) {
      const WrittenLog log{bytes};
      std::thread other{[&log, &bytes, round] {
        std::this_thread::sleep_for(std::chrono::microseconds(100 * round));
        fs::resize_file(log.path(), bytes.size() * static_cast<std::size_t>(round) / 20);
      }};
      const std::string fault = fault_in(log.path());
      other.join();
      CHECK(fault.empty());
    }
  }
}

TEST_CASE("a file that grows while it is read is read as far as it reached when it was opened") {
  const WrittenLog log{"Time,TC1\n0,20.0\n10,20.5\n"};
  const auto file = SourceFile::open(log.path());
  REQUIRE(file.ok());
  std::ofstream{log.path(), std::ios::binary | std::ios::app} << "20,21.0\n";
  BlockReader blocks{file.value(), log.path(), {TextEncoding::utf_8, 0, '\n', 1, 4096}};
  Block block;
  REQUIRE(blocks.next(block));
  CHECK(block.rows == 2);
  CHECK_FALSE(blocks.next(block));
  CHECK_FALSE(blocks.problem().has_value());
}
