// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/problems/command_line_problems.h"

namespace soakwright {

const char* command_line_words(CommandLineHelp help) {
  switch (help) {
    case CommandLineHelp::give_procedure:
      return "give one with --procedure, or a job with the key `procedure`";
    case CommandLineHelp::say_date_order:
      return "say it with --dates dmy|mdy|ymd, or with `dates` in [import] of the job";
    case CommandLineHelp::give_report:
      return "give a PDF that `soakwright check --report` wrote";
    case CommandLineHelp::sign_report_as_written:
      return "sign a report as `soakwright check --report` wrote it";
    case CommandLineHelp::write_report_with_review:
      return "give each finding a disposition in the review, and write the report again with --review";
    case CommandLineHelp::give_certificate:
      return "give the signer's certificate in PEM or PKCS#12: --certificate";
    case CommandLineHelp::give_password:
      return "give a file with the password: --password-file";
    case CommandLineHelp::check_password:
      return "check the first line of the password file";
  }
  return "";
}

Problem helped_by(Problem problem, CommandLineHelp help) {
  problem.help = command_line_words(help);
  problem.command_line_help = help;
  return problem;
}

}  // namespace soakwright
