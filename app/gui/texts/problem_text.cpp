// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/problem_text.h"

#include <utility>

#include "app/gui/texts/window_text.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

QString help_in_window(CommandLineHelp help) {
  switch (help) {
    case CommandLineHelp::give_procedure:
      return tr("open a procedure, or a job with the key `procedure`");
    case CommandLineHelp::say_date_order:
      return tr("choose the order of the dates in the import settings");
    case CommandLineHelp::give_report:
      return tr("open a report that Soakwright exported");
    case CommandLineHelp::sign_report_as_written:
      return tr("export the report again, and sign that");
    case CommandLineHelp::write_report_with_review:
      return tr("give each finding a disposition in the list of findings, and export the report again");
    case CommandLineHelp::give_certificate:
      return tr("choose the signer's certificate, PEM or PKCS#12, under Certificate");
    case CommandLineHelp::give_password:
      return tr("type its password");
    case CommandLineHelp::check_password:
      return tr("type it again");
  }
  return {};
}

}  // namespace

QString problem_text(const Problem& problem) {
  Problem here = problem;
  if (problem.command_line_help) here.help = help_in_window(*problem.command_line_help).toStdString();
  return pdf::shown_text(here.text());
}

QStringList problem_texts(const Problems& problems) {
  QStringList texts;
  for (const Problem& problem : problems) texts.append(problem_text(problem));
  return texts;
}

QString drafting_text(const Problem& problem) {
  const std::pair<const char*, QString> fields[] = {{"--hold-time", tr("Hold time")},
                                                    {"--hold", tr("Hold range")},
                                                    {"--thickness", tr("Thickness")},
                                                    {"--material", tr("Material")},
                                                    {"--lower-by", tr("Lower holding temperature")}};
  QString text = problem_text(problem);
  for (const auto& [option, name] : fields) text.replace(QLatin1String(option), name);
  return text;
}

}  // namespace soakwright::gui
