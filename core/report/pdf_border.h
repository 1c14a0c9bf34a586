// SPDX-License-Identifier: GPL-3.0-or-later
// What the program and its report writer, a module that is loaded at run time, agree on.
//
// The module exports five functions in C's naming. The loader calls kPdfModuleLayout first and goes on only
// where the text equals its own pdf_module_layout(): C++ values cross this border, and a module of another
// build would read them wrongly. No exception crosses it.
#pragma once

#include <string>

#include "core/problems/problem.h"
#include "core/report/report.h"
#include "core/report/report_contents.h"
#include "core/report/signature_words.h"

namespace soakwright {

/// The text of the module's pdf_module_layout(), ended by a zero.
using PdfModuleLayout = const char*();
constexpr const char* kPdfModuleLayout = "soakwright_pdf_layout";

// Each is true where it has done what it is for; else `problem` says why not. One call at a time, always from
// one thread. Files are written whole or not at all.

/// The report with its files, to the path.
using PdfModuleWriteReport = bool(const ReportContents* contents, const std::string* path, Problem* problem);
constexpr const char* kPdfModuleWriteReport = "soakwright_write_report";
/// The chart alone, to the path: PNG, or SVG where the path ends in .svg.
using PdfModuleWriteChart = bool(const Report* report, const std::string* path, Problem* problem);
constexpr const char* kPdfModuleWriteChart = "soakwright_write_chart";
/// The bytes that writing the report would give.
using PdfModulePrintReport = bool(const ReportContents* contents, std::string* document, Problem* problem);
constexpr const char* kPdfModulePrintReport = "soakwright_print_report";
/// A PDF of one page with the words of a signature.
using PdfModulePrintSignature = bool(const SignatureWords* words, std::string* document, Problem* problem);
constexpr const char* kPdfModulePrintSignature = "soakwright_print_signature";

namespace layout {

template <typename... Types>
std::string sizes() {
  std::string text;
  ((text += std::to_string(sizeof(Types)), text += '.'), ...);
  return text;
}

}  // namespace layout

/// Version, compiler and the sizes of all that crosses the border; inline, so that each side has its own.
inline std::string pdf_module_layout(const std::string& version) {
  return version + ", " + __VERSION__ + ", " +
         layout::sizes<std::string, std::vector<double>, Problem, Report, LabelledText, RequiredStage,
                       ProcedureSection, WeldRow, RequirementRow, Evidence, HoldTable, HoldTable::Row,
                       RateTable, RateTable::Row, BudgetTable, BudgetTable::Row, ChannelRow, FindingRow,
                       EventRow, Letterhead, SummaryRow, Certificate, Explanation, NoticeRow, SuspectRow,
                       PhaseRow, HandRow, Fingerprint, SignaturePlace, Chart, ChartTrace, ChartRange,
                       ChartLevel, ChartSegment, ChartMark, ChartNote, ChartExclusion, ChartPoint, Readings,
                       Record, Channel, AttachedFile, ReportContents, SignatureWords>();
}

}  // namespace soakwright
