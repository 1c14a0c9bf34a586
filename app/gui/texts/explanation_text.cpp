// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/explanation_text.h"

#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

QString part(const QString& name, const QString& words) {
  return QStringLiteral("<p style='margin:6px 0 0 0'><b>%1</b> %2</p>").arg(name, words);
}

}  // namespace

QString explanationText(const Explanation& explanation) {
  QString causes;
  for (const std::string& cause : explanation.causes)
    causes += QStringLiteral("<li>%1</li>").arg(html_text(cause));
  const QString mark = QStringLiteral(" *");
  const QString why =
      html_text(explanation.why) + (explanation.why_is_common_practice()
                                        ? mark
                                        : tr(" <i>(%1)</i>").arg(html_text(explanation.why_source)));
  QString html = part(tr("Required:"), html_text(explanation.required)) + part(tr("Why:"), why) +
                 part(tr("Check first:"), html_text(explanation.look_first) + mark);
  if (!explanation.would_help.empty())
    html += part(tr("What would settle it:"), html_text(explanation.would_help) + mark);
  html +=
      part(tr("Usual causes:"), mark) + QStringLiteral("<ul style='margin:0 0 0 -20px'>%1</ul>").arg(causes);
  return html + QStringLiteral("<p style='margin:4px 0'><i>* %1</i></p>").arg(html_text(explanation.mark));
}

}  // namespace soakwright::gui
