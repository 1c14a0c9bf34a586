// SPDX-License-Identifier: GPL-3.0-or-later
// The module that the command line opens to sign and to verify. What both agree on:
// core/report/signing_border.h.
#include <string>
#include <utility>

#include "app/signing/signing.h"
#include "core/problems/caught.h"
#include "core/report/signing_border.h"

#ifdef _WIN32
#define SOAKWRIGHT_MODULE_ENTRY extern "C" __declspec(dllexport)
#else
#define SOAKWRIGHT_MODULE_ENTRY extern "C" __attribute__((visibility("default")))
#endif

using namespace soakwright;

SOAKWRIGHT_MODULE_ENTRY const char* soakwright_signing_layout() {
  static const std::string layout = signing_module_layout(SOAKWRIGHT_VERSION);
  return layout.c_str();
}

SOAKWRIGHT_MODULE_ENTRY bool soakwright_sign(const SignOrder* order, const ReportPrinter* printer,
                                             Problem* problem) {
  try {
    auto failed = signing::sign_report(*order, *printer);
    if (!failed) return true;
    *problem = std::move(*failed);
  } catch (...) {
    *problem = caught_problem(order->report);
  }
  return false;
}

SOAKWRIGHT_MODULE_ENTRY bool soakwright_verify(const VerifyOrder* order, const ReportPrinter* printer,
                                               const Watch* watch, std::vector<CheckLine>* lines,
                                               Problem* problem) {
  try {
    auto found = signing::verify_report(*order, *printer, *watch);
    if (found) {
      *lines = std::move(found).value();
      return true;
    }
    if (!found.problems().empty()) *problem = found.problems().front();
  } catch (...) {
    *problem = caught_problem(order->report);
  }
  return false;
}
