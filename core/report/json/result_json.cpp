// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/result_json.h"

#include <algorithm>
#include <optional>

#include "core/procedure/procedure_words.h"
#include "core/report/json/alternatives_json.h"
#include "core/report/json/explanation_json.h"
#include "core/report/json/heat_json.h"
#include "core/report/json/requirements_json.h"
#include "core/report/json/result_members.h"
#include "core/report/sections/sections.h"
#include "core/wording/column_words.h"
#include "core/wording/notice_words.h"
#include "core/wording/procedure_limits.h"
#include "core/wording/requirement_text.h"
#include "core/wording/statement_words.h"
#include "core/wording/suspect_words.h"

namespace soakwright {
namespace {

using Layout = JsonWriter::Layout;

const std::string& channel_name(const Record& record, std::size_t index) {
  return record.channels[index].name;
}

void write_reading(JsonWriter& json, Members& members, const Reading& reading) {
  members.object("reading", Layout::lines);
  members.setting("encoding", reading.encoding);
  members.setting("delimiter", reading.delimiter);
  members.setting("decimal", reading.decimal);
  members.setting("dates", reading.dates);
  members.setting("time", reading.time);
  members.setting("time_column", reading.time_column);
  members.line("header_line", reading.header_line.value);
  members.text("header_line_by", result_word(reading.header_line.by));
  json.key("heading");
  json.begin_array();
  for (const std::string& line : reading.heading) json.text(line);
  json.end_array();
  members.objects("changed_by_hand", reading.changed_by_hand, [&](const HandChange& change) {
    members.text("key", change.key);
    members.text("value", change.value);
    members.line("column", change.column.value_or(0));
  });
  json.end_object();
}

/// Date and time of the first sample, where the recorder showed a date.
std::optional<std::string> start_text(const Record& record) {
  const auto start = record.local_time(0.0);
  return start ? std::optional(start->iso()) : std::nullopt;
}

void write_log(JsonWriter& json, Members& members, const Record& record) {
  members.object("log", Layout::lines);
  members.text("file", record.file);
  members.text("sha256", record.sha256);
  members.integer("bytes", record.bytes);
  members.integer("rows", record.rows());
  members.text_or_null("start", start_text(record));
  members.moment("first", record.rows() > 0 ? std::optional(record.times_s.front()) : std::nullopt);
  members.moment("last", record.rows() > 0 ? std::optional(record.times_s.back()) : std::nullopt);
  members.number("duration_s", record.duration_s());
  members.number("interval_s", record.interval_s);
  write_reading(json, members, record.reading);
  members.objects("channels", record.channels, [&](const Channel& channel) {
    members.integer("column", channel.column);
    members.text("name", channel.name);
    members.text("unit", result_word(channel.unit));
    members.text("role", result_word(channel.role));
    members.text("zone", result_word(channel.zone));
    members.text_or_null("weld", channel.weld);
    json.key("evaluated");
    json.boolean(channel.evaluated());
    members.integer("samples", channel.readings.rows() - channel.readings.missing());
    members.integer("missing", channel.readings.missing());
    members.number("min", channel.min_c);
    members.number("max", channel.max_c);
  });
  members.objects("other_columns", record.other_columns, [&](const OtherColumn& column) {
    members.integer("column", column.column);
    members.text("name", column.name);
    members.text("why", reason_text(column.why));
  });
  members.objects("notices", record.notices, [&](const Notice& notice) {
    members.text("code", notice.code);
    members.line("line", notice.line);
    members.integer("count", notice.count);
    members.text_or_null("channel", notice.channel);
    members.text("text", notice_text(notice, record));
  });
  json.end_object();
}

/// Where limits come from, and in `limits_from` the same as people read it; null where nothing is said.
void write_provenance(Members& members, const Provenance& provenance) {
  members.text_or_null("source", provenance.source);
  members.text_or_null("edition", provenance.edition);
  members.text_or_null("clause", provenance.clause);
  members.text_or_null("flag", provenance.flag
                                   ? std::optional(std::string(kProvenanceFlagWords.of(*provenance.flag)))
                                   : std::nullopt);
  const std::string text = provenance_text(provenance);
  members.text_or_null("limits_from", text.empty() ? std::nullopt : std::optional(text));
}

void write_specified(JsonWriter& json, Members& members, const Procedure* procedure, const Job* job) {
  if (procedure != nullptr) {
    members.object("procedure", Layout::line);
    members.text("number", procedure->number);
    members.text_or_null("revision", procedure->revision);
    members.text_or_null("title", procedure->title);
    members.text("sha256", procedure->sha256);
    members.text("decision_rule", result_word(procedure->evaluation.decision));
    write_provenance(members, procedure->provenance);
    members.objects("stages", procedure->stages, [&](const Stage& stage) {
      members.integer("index", stage.number);
      write_provenance(members, stage.provenance);
    });
    json.end_object();
  } else {
    members.null("procedure");
  }
  if (job != nullptr) {
    members.object("job", Layout::line);
    members.text_or_null("work", job->work);
    members.text("sha256", job->sha256);
    json.end_object();
  } else {
    members.null("job");
  }
}

/// Each with a clock of its own: its start is written, and no moment of it.
void write_previous_records(Members& members, const std::vector<PreviousRecord>& earlier, const Job* job) {
  members.objects("previous_records", earlier, [&](const PreviousRecord& one) {
    members.integer("cycle", static_cast<std::size_t>(one.cycle));
    members.text("file", one.record->file);
    members.text("sha256", one.record->sha256);
    members.integer("bytes", one.record->bytes);
    members.integer("rows", one.record->rows());
    members.text_or_null("start", start_text(*one.record));
    members.number("duration_s", one.record->duration_s());
    const auto index = static_cast<std::size_t>(&one - earlier.data());
    const bool own_job =
        job != nullptr && index < job->previous_records.size() && job->previous_records[index].job;
    members.text_or_null("job_sha256", own_job ? std::optional(one.job->sha256) : std::nullopt);
    members.text("verdict", result_word(one.verdicts->verdict));
    JsonWriter& json = members.json();
    json.key("requirements");
    json.begin_array();
    for (const Requirement& requirement : one.verdicts->requirements) {
      json.begin_object();
      write_figures(members, requirement);
      json.end_object();
    }
    json.end_array();
  });
}

void write_confirmations(Members& members, const Record& record) {
  members.objects("confirmed", record.confirmations, [&](const Confirmation& confirmation) {
    members.text("channel", channel_name(record, confirmation.channel));
    members.text("suspect", confirmation.suspect);
    members.text("reason", confirmation.reason);
  });
}

void write_exclusions(Members& members, const Record& record) {
  members.objects("excluded", record.exclusions, [&](const Exclusion& exclusion) {
    members.text("channel", channel_name(record, exclusion.channel));
    members.moment("from", exclusion.from_s);
    members.moment("to", exclusion.to_s);
    members.text("reason", exclusion.reason);
  });
}

void write_course(Members& members, const Record& record, const Course& course) {
  members.objects("phases", course.phases, [&](const Phase& phase) {
    members.text("kind", result_word(phase.kind));
    members.moment("start", phase.start_s);
    members.moment("end", phase.end_s);
    members.number("rate", phase.rate_c_per_h);
    members.number("level", phase.level_c);
    members.number("spread_max", phase.spread_max_k);
  });
  members.objects("suspects", course.suspects, [&](const Suspect& suspect) {
    members.text("channel", channel_name(record, suspect.channel));
    members.text("code", result_word(suspect.code));
    members.moment("from", suspect.from_s);
    members.moment("to", suspect.to_s);
    members.text("text", suspect_sentence(suspect, record));
  });
}

void write_stages(JsonWriter& json, Members& members, const std::vector<StageCourse>& stages) {
  members.objects("stages", stages, [&](const StageCourse& stage) {
    members.text_or_null("weld", stage.weld);
    members.integer("index", stage.number);
    members.text("kind", stage.kind);
    members.moment("start", stage.start_s);
    members.moment("end", stage.end_s);
    json.key("continuous");
    stage.continuous ? members.span(*stage.continuous) : json.null();
    members.spans("in_range", stage.in_range);
    members.spans("edge_crossings", stage.edge_crossings);
    json.key("channels");
    json.begin_array();
    for (const StageChannel& channel : stage.channels) {
      json.begin_object();
      members.text("name", channel.name);
      members.moment("in", channel.in_s);
      members.moment("out", channel.out_s);
      members.number("min", channel.min_c);
      members.number("max", channel.max_c);
      members.number("mean", channel.mean_c);
      json.end_object();
    }
    json.end_array();
    write_by_excursion_allowed(members, stage.by_excursion_allowed);
  });
}

void write_tempering(Members& members, const std::vector<ChannelTempering>& tempering) {
  members.objects("tempering", tempering, [&](const ChannelTempering& one) {
    members.text_or_null("weld", one.weld);
    members.text("channel", one.channel);
    members.number("parameter", one.parameter);
    members.number("hours_at", one.hours_at_c);
    members.number("hours", one.hours);
  });
}

}  // namespace

std::string result_json(const Analysis& analysis) {
  const Record& record = *analysis.record;
  const Verdicts nothing_specified;
  const Course no_course;
  const Procedure no_procedure;
  const Procedure& procedure = analysis.procedure ? *analysis.procedure : no_procedure;
  const Verdicts& verdicts = analysis.verdicts ? *analysis.verdicts : nothing_specified;
  const PrintedNumbers say{TemperatureUnit::celsius, record};  // texts in °C, like the numbers beside them
  JsonWriter json;
  Members members(json, record);

  json.begin_object(Layout::lines);
  members.text("soakwright", "result 1");
  members.text("version", SOAKWRIGHT_VERSION);
  write_log(json, members, record);
  write_specified(json, members, analysis.procedure.get(), analysis.job.get());
  write_previous_records(members, analysis.previous_records, analysis.job.get());
  members.objects("replaced", verdicts.replaced, [&](const Replacement& replacement) {
    members.text("channel", replacement.channel);
    members.text("by", replacement.by);
    members.moment("from", replacement.from_s);
    members.number("step", replacement.step_k);
  });
  write_exclusions(members, record);
  write_confirmations(members, record);
  write_course(members, record, analysis.course ? *analysis.course : no_course);
  members.objects("welds", verdicts.welds, [&](const WeldVerdict& weld) {
    members.text_or_null("number", weld.number);
    members.number("thickness_mm", weld.thickness_mm);
    members.text("verdict", result_word(weld.verdict));
  });
  write_budgets(members, verdicts.budgets);
  write_stages(json, members, verdicts.stages);
  write_tempering(members, verdicts.tempering);
  write_heat(members, analysis);
  const std::vector<FirstDeviation> deviations = first_deviations(analysis);
  write_requirements(members, verdicts.requirements, procedure, deviations, say);
  write_findings(members, verdicts, {analysis, say});
  const FirstDeviation* first = earliest_of(deviations);
  write_deviation(members, first, first != nullptr ? &verdicts.requirements[first->requirement] : nullptr,
                  say);
  json.key("verdict");
  analysis.verdicts ? json.text(result_word(analysis.verdicts->verdict)) : json.null();
  json.end_object();
  return json.str() + '\n';
}

}  // namespace soakwright
