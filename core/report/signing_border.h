// SPDX-License-Identifier: GPL-3.0-or-later
// What the program and its signing module, loaded at run time, agree on. The module exports three functions
// in C's naming; the loader calls kSigningModuleLayout first and goes on only where the text equals its own
// signing_module_layout(), since C++ values cross this border. No exception crosses it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/report/pdf_border.h"
#include "core/system/watch.h"

namespace soakwright {

struct SignOrder {
  std::string report;
  std::string key;            ///< PEM, or PKCS#12 with key and certificate
  std::string certificate;    ///< PEM or PKCS#12; empty: the one beside the key
  std::string password_file;  ///< its first line opens key and certificate; empty where none is needed
  std::string name;
  Person::Role role = Person::Role::performed;
  std::string out;                           ///< empty: the report itself
  std::optional<std::string> password = {};  ///< as it was typed; wins over password_file
};

struct VerifyOrder {
  std::string report;
  std::string trust;           ///< certificates (PEM) that are trusted; empty where none is named
  std::string timestamp = {};  ///< a time stamp of the report (RFC 3161); empty where none is named
};

/// One thing that verifying a report looks at.
struct CheckLine {
  enum class State {
    holds,
    fails,
    open,  ///< could not be shown: no signature, or nothing to compare with
    note,  ///< for the reader; decides nothing
  };
  State state = State::holds;
  std::string what;  ///< "Result"
  std::string text;
};

/// The report writer, as the module is lent it: app/signing knows no Qt.
struct ReportPrinter {
  std::function<Result<std::string>(const ReportContents&)> report;
  std::function<Result<std::string>(const SignatureWords&)> signature;
};

/// The text of the module's signing_module_layout(), ended by a zero.
using SigningModuleLayout = const char*();
constexpr const char* kSigningModuleLayout = "soakwright_signing_layout";
/// Signs as ordered. True if the file is written; else `problem` says why not.
using SigningModuleSign = bool(const SignOrder* order, const ReportPrinter* printer, Problem* problem);
constexpr const char* kSigningModuleSign = "soakwright_sign";
/// True if the report could be looked at: then `lines` say what was found; else `problem` says why not,
/// unless `watch` was cancelled. The watch follows evaluating the files inside; whoever lends the printer
/// follows that.
using SigningModuleVerify = bool(const VerifyOrder* order, const ReportPrinter* printer, const Watch* watch,
                                 std::vector<CheckLine>* lines, Problem* problem);
constexpr const char* kSigningModuleVerify = "soakwright_verify";

inline std::string signing_module_layout(const std::string& version) {
  return pdf_module_layout(version) + ' ' +
         layout::sizes<SignOrder, VerifyOrder, CheckLine, ReportPrinter, Watch>();
}

}  // namespace soakwright
