// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/report_printer.h"

#include "app/pdf/pages/signature_print.h"
#include "app/pdf/report_writer.h"

namespace soakwright::gui {

std::unique_lock<std::mutex> printing_turn() {
  static std::mutex one_at_a_time;
  return std::unique_lock(one_at_a_time);
}

ReportPrinter report_printer() {
  return {[](const ReportContents& contents) {
            const auto turn = printing_turn();
            return report_document(contents);
          },
          [](const SignatureWords& words) {
            const auto turn = printing_turn();
            return print_signature(words);
          }};
}

}  // namespace soakwright::gui
