// SPDX-License-Identifier: GPL-3.0-or-later
// What reports cost, on a record of 86,400 rows and 24 channels: one, and many in one process. Prints a line
// for each figure; ends with 1 where one is missed.
//
//   report_bench [JOB] [REPORTS] [FOLDER]     of JOB (default: a made-up day), REPORTS times (default 1000)
//
// Wanted: a report in under 1.0 s and under 2 MB beside the compressed log; the last tenth of the reports no
// dearer than the first by more than a quarter; at the end at most 2 MB more allocated than after half of
// them, so that a leak of 5 kB a report shows.
#include <QGuiApplication>
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include <malloc.h>

#include "app/evidence/deflate.h"
#include "app/pdf/report_writer.h"
#include "core/analyse.h"
#include "core/report/report_contents.h"

namespace {

using namespace soakwright;
namespace fs = std::filesystem;

constexpr double kMost_s = 1.0;
constexpr double kMost_MB = 2.0;
constexpr double kDearer = 1.25;
constexpr double kMostGrowth_MB = 2.0;

/// Memory allocated and not given back, in MB (mallinfo2(3)): exact, where the resident memory swings by a
/// thread's stack or a block that the allocator keeps for the next report.
double allocated_MB() {
  const struct mallinfo2 now = mallinfo2();
  return static_cast<double>(now.uordblks + now.hblkhd) / (1024.0 * 1024.0);
}

/// Resident memory of this process in MB (Linux, proc(5)).
double resident_MB() {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);)
    if (line.rfind("VmRSS:", 0) == 0) return std::strtod(line.c_str() + 6, nullptr) / 1024.0;
  return 0.0;
}

/// A day in seconds on 24 channels with noise: up to 605 °C, four hours held, down again.
std::string made_up_day(const fs::path& folder) {
  constexpr int kRows = 86'400;
  constexpr int kChannels = 24;
  const fs::path log = folder / "day.csv";
  std::ofstream out(log);
  out << "Seconds";
  for (int channel = 1; channel <= kChannels; ++channel) out << ",TC" << channel << " (°C)";
  out << '\n';
  std::mt19937 chance(20310402);
  std::normal_distribution<double> noise(0.0, 0.2);
  for (int row = 0; row < kRows; ++row) {
    out << row;
    for (int channel = 0; channel < kChannels; ++channel) {
      const double minutes = row / 60.0 - 0.5 * channel;
      double celsius = 20.0;
      if (minutes > 60.0) celsius = std::min(605.0, 20.0 + 585.0 * (minutes - 60.0) / 500.0);
      if (minutes > 800.0) celsius = std::max(60.0, 605.0 - 545.0 * (minutes - 800.0) / 500.0);
      char cell[16];
      std::snprintf(cell, sizeof cell, ",%.1f", celsius + noise(chance));
      out << cell;
    }
    out << '\n';
  }
  const fs::path procedure = folder / "day-procedure.toml";
  std::ofstream(procedure) << "soakwright = \"procedure 1\"\nnumber = \"HTP-1\"\nunit = \"C\"\n"
                              "[record]\ntemperature_max = 650\n"
                              "[[stage]]\nkind = \"heat\"\nabove = 300\nrate_max = 100\nspread_max = 100\n"
                              "[[stage]]\nkind = \"hold\"\nlow = 590\nhigh = 620\ntime_min = \"3 h\"\n"
                              "spread_max = 30\n"
                              "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 100\n";
  const fs::path job = folder / "day.toml";
  std::ofstream(job) << "soakwright = \"job 1\"\nwork = \"Made-up day\"\nlog = \"day.csv\"\n"
                        "procedure = \"day-procedure.toml\"\n";
  return job.string();
}

/// Bytes that the log takes inside the report.
double compressed_log(const Analysis& analysis) {
  std::ifstream in(analysis.log_path, std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(in), {}};
  return static_cast<double>(evidence::deflated(bytes).size());
}

bool figure(const char* name, double found, double wanted, const char* unit) {
  const bool held = found <= wanted;
  std::printf("%-34s %9.3f %-3s wanted %.3f%s\n", name, found, unit, wanted, held ? "" : "   MISSED");
  return held;
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QGuiApplication application(argc, argv);
  const fs::path folder =
      argc > 3 ? fs::path(argv[3]) : fs::temp_directory_path() / "soakwright-report-bench";
  fs::create_directories(folder);
  const std::string job = argc > 1 && *argv[1] != '\0' ? argv[1] : made_up_day(folder);
  const int reports = argc > 2 ? std::max(10, std::atoi(argv[2])) : 1000;
  Request request;
  request.job = job;
  const auto analysis = check(request);
  if (!analysis) {
    for (const Problem& problem : analysis.problems()) std::fprintf(stderr, "%s\n", problem.text().c_str());
    return 1;
  }
  const std::string path = (folder / "report.pdf").string();
  std::vector<double> seconds;
  double half_way_MB = 0.0;  // allocated
  for (int i = 0; i < reports; ++i) {
    if (i == reports / 2) half_way_MB = allocated_MB();
    const auto begin = std::chrono::steady_clock::now();
    const auto contents = report_contents(analysis.value());
    const std::optional<Problem> problem =
        contents ? write_report(contents.value(), path) : contents.problems().front();
    if (problem) {
      std::fprintf(stderr, "%s\n", problem->text().c_str());
      return 1;
    }
    seconds.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count());
  }
  const auto median_of = [&](std::size_t from, std::size_t to) {
    std::vector<double> part(seconds.begin() + static_cast<std::ptrdiff_t>(from),
                             seconds.begin() + static_cast<std::ptrdiff_t>(to));
    std::nth_element(part.begin(), part.begin() + static_cast<std::ptrdiff_t>(part.size() / 2), part.end());
    return part[part.size() / 2];
  };
  const std::size_t tenth = seconds.size() / 10;
  bool held = figure("report, median", median_of(0, seconds.size()), kMost_s, "s");
  held = figure("size beside the compressed log",
                (static_cast<double>(fs::file_size(path)) - compressed_log(analysis.value())) / 1e6, kMost_MB,
                "MB") &&
         held;
  held = figure("last tenth to first",
                median_of(seconds.size() - tenth, seconds.size()) / median_of(0, tenth), kDearer, "") &&
         held;
  held = figure("growth over the second half", allocated_MB() - half_way_MB, kMostGrowth_MB, "MB") && held;
  std::printf("%d reports, %.0f MB in the end\n", reports, resident_MB());
  return held ? 0 : 1;
}
