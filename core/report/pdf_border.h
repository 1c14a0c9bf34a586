// SPDX-License-Identifier: GPL-3.0-or-later
// What the program and its report writer, a module that is loaded at run time, agree on.
//
// The module exports three functions in C's naming. The loader calls kPdfModuleLayout first and goes on only
// where the text equals its own pdf_module_layout(): C++ values cross this border, and a module of another
// build would read them wrongly. No exception crosses it.
#pragma once

#include <string>

#include "core/problems/problem.h"
#include "core/report/report.h"

namespace soakwright {

/// The text of the module's pdf_module_layout(), ended by a zero.
using PdfModuleLayout = const char*();
constexpr const char* kPdfModuleLayout = "soakwright_pdf_layout";

/// Writes what it was made for to the path, whole or not at all. True if it is written; else `problem` says
/// why not. One call at a time, always from one thread.
using PdfModuleWrite = bool(const Report* report, const std::string* path, Problem* problem);
constexpr const char* kPdfModuleWriteReport = "soakwright_write_report";
constexpr const char* kPdfModuleWriteChart = "soakwright_write_chart";

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
                       RateTable, RateTable::Row, BudgetTable, BudgetTable::Row, ChannelRow, FindingRow, EventRow, Letterhead, SummaryRow, Certificate,
                       Explanation, NoticeRow, SuspectRow, PhaseRow, HandRow, Fingerprint, SignaturePlace,
                       Chart, ChartTrace, ChartRange, ChartLevel, ChartSegment, ChartMark, ChartNote,
                       ChartExclusion, ChartPoint, Readings, Record, Channel>();
}

}  // namespace soakwright
