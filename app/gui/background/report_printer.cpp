// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/report_printer.h"

#include "app/pdf/pages/signature_print.h"
#include "app/pdf/report_writer.h"

namespace soakwright::gui {

std::unique_lock<std::mutex> printing_turn() {
  static std::mutex one_at_a_time;
  return std::unique_lock(one_at_a_time);
}

ReportPrinter report_printer(const Watch& watch) {
  return {[watch](const ReportContents& contents) -> Result<std::string> {
            const auto turn = printing_turn();
            if (watch.stopped()) return Problems{};
            return report_document(contents, watch);
          },
          [](const SignatureWords& words) {
            const auto turn = printing_turn();
            return print_signature(words);
          }};
}

}  // namespace soakwright::gui
