// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/explanation_json.h"

#include "core/wording/statement_words.h"

namespace soakwright {

void write_explanation(Members& members, const std::optional<Explanation>& explanation) {
  if (!explanation) return members.null("explanation");
  JsonWriter& json = members.json();
  members.object("explanation", JsonWriter::Layout::line);
  members.text("required", explanation->required);
  members.text("why", explanation->why);
  members.text("why_source", explanation->why_source);
  members.text("shown", explanation->shown);
  json.key("causes");
  json.begin_array();
  for (const std::string& cause : explanation->causes) json.text(cause);
  json.end_array();
  members.text("look_first", explanation->look_first);
  members.text_or_null(
      "would_help", explanation->would_help.empty() ? std::nullopt : std::optional(explanation->would_help));
  members.text("mark", explanation->mark);
  json.end_object();
}

void write_deviation(Members& members, const FirstDeviation* deviation, const Requirement* requirement,
                     const PrintedNumbers& say) {
  if (deviation == nullptr) return members.null("first_deviation");
  members.object("first_deviation", JsonWriter::Layout::line);
  if (requirement != nullptr) {
    members.text("requirement", requirement->id);
    members.text_or_null("weld", requirement->weld);
  }
  members.moment("at", deviation->at_s);
  members.text_or_null("channel", deviation->channel);
  members.moment("lost_from", deviation->lost_from_s);
  members.text("text", words(deviation->what, say));
  members.json().end_object();
}

}  // namespace soakwright
