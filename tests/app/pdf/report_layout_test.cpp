// SPDX-License-Identifier: GPL-3.0-or-later
// The pages of every sample's report, as a reader sees them: filled, nothing over anything else, in order.
// Sources: common practice of typesetting, no source, but where a standard is named.
#include <QRectF>
#include <QRegularExpression>
#include <QString>
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/analyse.h"
#include "tests/app/pdf/printed.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

namespace fs = std::filesystem;

/// Every job of the sample logs, in order of their paths.
std::vector<std::string> sample_jobs() {
  std::vector<std::string> jobs;
  for (const auto& entry : fs::recursive_directory_iterator(SOAKWRIGHT_SOURCE_DIR "/sample-logs")) {
    if (entry.path().extension() != ".toml") continue;
    std::ifstream in(entry.path());
    std::stringstream text;
    text << in.rdbuf();
    if (text.str().find("\"job 1\"") != std::string::npos) jobs.push_back(entry.path().string());
  }
  std::sort(jobs.begin(), jobs.end());
  return jobs;
}

Report report_of(const std::string& job, Paper paper = Paper::a4) {
  Request request;
  request.job = job;
  const auto analysis = check(request);
  INFO(job);
  REQUIRE(analysis);
  return make_report(analysis.value(), {std::nullopt, "0.1.0", paper});
}

struct Picture {
  int width = 0, height = 0;
  std::string grey;
  [[nodiscard]] bool has_ink(int row) const {
    constexpr unsigned char kInk = 190;  // the stamp of a draft is paler
    const auto begin = grey.begin() + static_cast<std::ptrdiff_t>(row) * width;
    return std::any_of(begin, begin + width, [](char c) { return static_cast<unsigned char>(c) < kInk; });
  }
};

/// Portable graymaps, one after the other (netpbm, pgm).
std::vector<Picture> pictures_of(const Printed& printed) {
  const std::string bytes = output_of("pdftoppm", {"-r", "25", "-gray", printed.path()});
  std::vector<Picture> pages;
  for (std::size_t at = 0; at < bytes.size();) {
    std::istringstream head(bytes.substr(at, 40));
    std::string magic;
    Picture page;
    int most = 0;
    head >> magic >> page.width >> page.height >> most;
    REQUIRE(magic == "P5");
    at += static_cast<std::size_t>(head.tellg()) + 1;
    page.grey =
        bytes.substr(at, static_cast<std::size_t>(page.width) * static_cast<std::size_t>(page.height));
    at += page.grey.size();
    pages.push_back(std::move(page));
  }
  return pages;
}

struct Fill {
  double reached = 0.0;  ///< share of the body's height down to its last ink
  double gap = 0.0;      ///< the largest share of it without any, above that
};

Fill fill_of(const Picture& page) {
  constexpr double kMillimetre = 25.0 / 25.4;
  const int first = static_cast<int>(18.0 * kMillimetre);
  const int end = page.height - static_cast<int>(16.0 * kMillimetre);
  Fill fill;
  int last = first;
  for (int row = first; row < end; ++row) {
    if (!page.has_ink(row)) continue;
    fill.gap = std::max(fill.gap, static_cast<double>(row - last) / (end - first));
    last = row;
  }
  fill.reached = static_cast<double>(last - first) / (end - first);
  return fill;
}

struct Word {
  QRectF box;
  std::string text;
};
struct WordPage {
  QSizeF size;
  std::vector<Word> words;
};

std::vector<WordPage> words_of(const Printed& printed) {
  const QString xml =
      QString::fromStdString(output_of("pdftotext", {"-bbox", "-enc", "UTF-8", printed.path(), "-"}));
  static const QRegularExpression element(QStringLiteral(
      "<page width=\"([\\d.]+)\" height=\"([\\d.]+)\"|<word xMin=\"([-\\d.]+)\" yMin=\"([-\\d.]+)\" "
      "xMax=\"([-\\d.]+)\" yMax=\"([-\\d.]+)\">(.*?)</word>"));
  std::vector<WordPage> pages;
  for (auto match = element.globalMatch(xml); match.hasNext();) {
    const QRegularExpressionMatch found = match.next();
    const auto number = [&](int group) { return found.captured(group).toDouble(); };
    if (!found.captured(1).isEmpty())
      pages.push_back({{number(1), number(2)}, {}});
    else
      pages.back().words.push_back({QRectF(QPointF(number(3), number(4)), QPointF(number(5), number(6))),
                                    found.captured(7).toStdString()});
  }
  return pages;
}

/// Boxes of neighbouring lines and of letters with a stroke above may touch.
bool over_each_other(const QRectF& a, const QRectF& b) {
  const QRectF both = a.intersected(b);
  return both.width() > 0.15 * std::min(a.width(), b.width()) &&
         both.height() > 0.3 * std::min(a.height(), b.height());
}

/// The first of `parts` that does not come after the one before it; empty where all are in order.
std::string out_of_order(const std::string& text, const std::vector<std::string>& parts) {
  std::size_t at = 0;
  for (const std::string& part : parts) {
    const std::size_t found = text.find(part, at);
    if (found == std::string::npos) return part;
    at = found + part.size();
  }
  return {};
}

/// As a reader without eyes gets it: what poppler takes for the order, or (`raw`) the order of the file.
std::string plain_text(const Printed& printed, int page = 0, bool raw = false) {
  std::vector<std::string> arguments;
  if (page > 0) arguments = {"-f", std::to_string(page), "-l", std::to_string(page)};
  if (raw) arguments.emplace_back("-raw");
  arguments.insert(arguments.end(), {"-enc", "UTF-8", printed.path(), "-"});
  return QString::fromStdString(output_of("pdftotext", arguments)).simplified().toStdString();
}

}  // namespace

TEST_CASE("no page of a sample's report is mostly empty") {
  const std::vector<std::string> jobs = sample_jobs();
  REQUIRE(jobs.size() >= 9);
  for (const std::string& job : jobs)
    for (const Paper paper : {Paper::a4, Paper::letter}) {
      const Printed printed(report_of(job, paper));
      const std::vector<Picture> pages = pictures_of(printed);
      REQUIRE(pages.size() == static_cast<std::size_t>(printed.pages()));
      for (std::size_t i = 0; i < pages.size(); ++i) {
        const Fill fill = fill_of(pages[i]);
        CAPTURE(job, paper == Paper::letter, i + 1, pages.size(), fill.reached, fill.gap);
        CHECK(fill.reached > (i + 1 == pages.size() ? 0.4 : 0.5));  // the last page ends where the text does
        CHECK(fill.gap < 0.3);
      }
    }
}

TEST_CASE("on no page of a sample's report a word stands over another or outside the sheet") {
  for (const std::string& job : sample_jobs()) {
    const Printed printed(report_of(job));
    const std::vector<WordPage> pages = words_of(printed);
    std::size_t words = 0;
    for (std::size_t p = 0; p < pages.size(); ++p) {
      const QRectF sheet = QRectF(QPointF(), pages[p].size).adjusted(20, 15, -20, -15);
      const std::vector<Word>& all = pages[p].words;
      words += all.size();
      for (std::size_t i = 0; i < all.size(); ++i) {
        CAPTURE(job, p + 1, all[i].text);
        if (!sheet.contains(all[i].box)) FAIL_CHECK("outside the sheet's margins");
        for (std::size_t j = i + 1; j < all.size(); ++j)
          if (over_each_other(all[i].box, all[j].box)) FAIL_CHECK("over '" << all[j].text << "'");
      }
    }
    CHECK(words > 500);
  }
}

TEST_CASE("no word of a sample's report is smaller than 7 pt, and those of the text are not under 8 pt") {
  // The letters of DejaVu Sans reach from 0.236 below the line to 0.928 above it (hhea table of the font).
  constexpr double kLetterHeight = 0.236 + 0.928;
  for (const std::string& job : sample_jobs()) {
    std::size_t small = 0;
    std::size_t upright = 0;
    for (const WordPage& page : words_of(Printed(report_of(job)))) {
      const bool lies = page.size.width() > page.size.height();
      for (const Word& word : page.words) {
        const double points = std::max(word.box.height(), std::min(word.box.width(), 40.0)) / kLetterHeight;
        CAPTURE(job, word.text, word.box.height());
        if (word.text.size() > 3) CHECK(points > 6.9);
        if (lies) continue;
        ++upright;
        if (word.box.height() / kLetterHeight < 7.9) ++small;  // heads, feet and small charts
      }
    }
    CAPTURE(job);
    CHECK(small * 3 < upright);
  }
}

TEST_CASE("without its layout the text of a report reads in its order") {
  const std::string job = SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-118-late-and-dipping/job.toml";
  const Printed printed(report_of(job));
  CHECK(out_of_order(
            plain_text(printed),
            {"Heat treatment report", "Not met", "At a glance", "Performed by", "Requirements in detail",
             "Findings", "Holds by thermocouple", "Rates by thermocouple", "The findings explained",
             "Channels as read", "Procedure requirements", "Recorded cycle", "How the log was read",
             "File warnings", "How it was measured", "Cautions", "Source files"})
            .empty());
  const std::string first = plain_text(printed, 1);
  INFO(first);
  CHECK(out_of_order(first, {"Heat treatment report", "Report number", "Date of issue", "weld W-118",
                             "Not met", "Work: Steam drum D-3", "Weld: W-118",
                             "Client: Saltmarsh Heat & Power", "Contractor: Brackwater Fabrication",
                             "Procedure: HTP-021", "At a glance", "Performed by"})
            .empty());
  // Tables row by row, the figure behind its limit.
  const std::string in_file = plain_text(printed, 1, true);
  INFO(in_file);
  CHECK(out_of_order(in_file, {"Heat treatment report", "Not met", "Work: Steam drum D-3",
                               "Procedure: HTP-021", "At a glance", "Required", "Recorded", "Verdict",
                               "Heating rate", "144.7", "210.2", "Not met", "Hold time", "1 h 35 min",
                               "1 h 18 min 41 s", "Not met", "Performed by", "Reviewed by", "Witnessed by"})
            .empty());
}

TEST_CASE("page 1 stands alone as a certificate") {
  const std::string job = SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-117-stress-relief/job-guarded.toml";
  qputenv("SOURCE_DATE_EPOCH", "1933545600");
  const Printed printed(report_of(job));
  qunsetenv("SOURCE_DATE_EPOCH");
  const std::string text = printed.text(1);
  for (const char* words : {"Heat treatment report",
                            "Report number",
                            "Date of issue 2031-04-10",
                            "Steam drum D-3, nozzle N2 to shell",
                            "W-117",
                            "BF-D3-104",
                            "Carbon-manganese steel",
                            "38 mm",
                            "HTP-021",
                            "Resistance mats, two zones",
                            "0412",
                            "BF-TC-0731",
                            "class 1",
                            "Heating rate",
                            "Holding temperature",
                            "Hold time",
                            "Cooling rate",
                            "Spread, stage 1, heat",
                            "Maximum temperature",
                            "Performed by",
                            "Reviewed by",
                            "Witnessed by",
                            "Name",
                            "Company",
                            "Date",
                            "Signature",
                            "Log SHA-256"})
    CHECK_THAT(text, Contains(words));
}

TEST_CASE("a report on Letter has sheets of 8.5 by 11 inches") {
  const std::string job = SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-124-half-broken/job.toml";
  for (const WordPage& page : words_of(Printed(report_of(job, Paper::letter)))) {
    // ANSI/ASME Y14.1, size A; in points of 1/72 in.
    CHECK(std::min(page.size.width(), page.size.height()) == Approx(612.0));
    CHECK(std::max(page.size.width(), page.size.height()) == Approx(792.0));
  }
}

TEST_CASE("every page has the short digest of the log") {
  const Report report = report_of(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-117-stress-relief/job.toml");
  const Printed printed(report);
  for (int page = 1; page <= printed.pages(); ++page)
    CHECK_THAT(printed.text(page),
               Contains("Log SHA-256 " + report.fingerprints.front().sha256.substr(0, 16)));
}
