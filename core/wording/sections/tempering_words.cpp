// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/tempering_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/wording/stage_words.h"

namespace soakwright {
namespace {

std::string parameter_text(double parameter) { return decimal_text(parameter, 3); }

/// Beyond this nobody reads a figure: the temperature is far below that of the tempering.
constexpr double kMostHours = 1e6;

std::string hours_text(const std::optional<double>& hours) {
  if (!hours) return "–";
  if (*hours > kMostHours) return "over 1,000,000";
  return decimal_text(*hours, *hours < 100.0 ? 2 : 0);
}

std::string temperature_text(const std::optional<double>& celsius, const PrintedNumbers& say) {
  return celsius ? say.limit(Temperature::of_celsius(*celsius)) : std::string{};
}

std::string at_least(bool is_least, const std::string& text) { return is_least ? "at least " + text : text; }

bool not_all_known(const ChannelHeat& one) {
  return one.not_known_s > kShortestNamed_s || !one.in_all_records;
}

/// "Cycle 2", with its part where several records are of one cycle.
std::string record_title(const std::vector<RecordTempering>& records, std::size_t index) {
  const int cycle = records[index].cycle;
  std::size_t first = index;
  while (first > 0 && records[first - 1].cycle == cycle) --first;
  const bool whole = first == index && (index + 1 == records.size() || records[index + 1].cycle != cycle);
  return whole ? fmt::format("Cycle {}", cycle) : fmt::format("Cycle {}, part {}", cycle, index - first + 1);
}

std::vector<std::optional<std::string>> welds_of(const std::vector<ChannelHeat>& all) {
  std::vector<std::optional<std::string>> welds;
  for (const ChannelHeat& one : all)
    if (std::find(welds.begin(), welds.end(), one.weld) == welds.end()) welds.push_back(one.weld);
  return welds;
}

/// The label of a line, with its weld where there are several.
std::string of_weld(std::string label, const std::optional<std::string>& weld, bool several) {
  if (several && weld) label.append(", ").append(*weld);
  return label;
}

std::vector<LabelledText> tempering_facts(const Heat& heat, bool several, const PrintedNumbers& say) {
  const PublishedFormula formula = tempering_formula(heat.constant);
  std::vector<LabelledText> facts{{"Formula", formula.formula}, {"Constant C", short_text(heat.constant, 3)}};
  facts.push_back(
      {"Method",
       "Carried along over the whole recorded curve: at each step the tempering so far is converted "
       "to the temperature of the step at equal P, then the step is added."});
  if (several && heat.reference_c)
    facts.push_back({"Sum of hours",
                     fmt::format("The other published way: the equivalent hours of each record at {}, added. "
                                 "It depends on that temperature and differs a little from carrying along.",
                                 temperature_text(heat.reference_c, say))});
  facts.push_back({"Source", formula.source + ", seen in print"});
  return facts;
}

FigureTable tempering_table(const Heat& heat, const std::optional<std::string>& weld, bool name_weld,
                            const PrintedNumbers& say) {
  FigureTable table;
  std::size_t records = 1;
  for (const ChannelHeat& one : heat.tempering)
    if (one.weld == weld) records = std::max(records, one.records.size());
  const bool several = records > 1;
  table.title = several ? fmt::format("Tempering over all {} records", records)
                        : std::string{"Tempering over the whole record"};
  if (name_weld && weld) table.title += ", weld " + *weld;
  table.facts = tempering_facts(heat, several, say);
  table.columns = {"Thermocouple"};
  const std::string at = temperature_text(heat.reference_c, say);
  bool any_unknown = false;
  for (const ChannelHeat& one : heat.tempering) {
    if (one.weld != weld) continue;
    if (table.rows.empty()) {
      if (several)
        for (std::size_t i = 0; i < one.records.size(); ++i)
          table.columns.push_back(record_title(one.records, i) + ": P");
      table.columns.push_back(several ? "All records: P" : "P");
      if (heat.reference_c) table.columns.push_back("Hours at " + at);
      if (several && heat.reference_c) table.columns.push_back("Sum of hours at " + at);
      table.columns.push_back("Temperature not known");
    }
    std::vector<std::string> row{one.channel};
    if (several)
      for (const RecordTempering& record : one.records)
        row.push_back(!record.has_channel ? "not in it"
                      : record.parameter
                          ? at_least(record.not_known_s > kShortestNamed_s, parameter_text(*record.parameter))
                          : std::string{"not known"});
    row.push_back(one.parameter ? at_least(not_all_known(one), parameter_text(*one.parameter))
                                : std::string{"not known"});
    if (heat.reference_c) row.push_back(at_least(one.hours && not_all_known(one), hours_text(one.hours)));
    if (several && heat.reference_c)
      row.push_back(one.referred_hours && one.referred_parameter
                        ? fmt::format("{} (P {})",
                                      at_least(not_all_known(one), hours_text(one.referred_hours)),
                                      parameter_text(*one.referred_parameter))
                        : std::string{"–"});
    row.push_back(one.not_known_s > kShortestNamed_s ? say.duration(one.not_known_s) : std::string{});
    any_unknown = any_unknown || not_all_known(one);
    table.rows.push_back(std::move(row));
  }
  if (any_unknown)
    table.notes.emplace_back(
        "Time in which the temperature is not known, or which a person excluded, adds nothing: what is given "
        "as at least may be more.");
  table.notes.emplace_back(
      "P is that of the whole recorded curve, heating and cooling included, and not of one hold.");
  return table;
}

std::string qualified_text(const QualifiedTempering& qualified, const PrintedNumbers& say) {
  if (qualified.given) return "P " + parameter_text(*qualified.given);
  std::vector<std::string> holds;
  for (const QualifiedHold& hold : qualified.holds)
    holds.push_back(fmt::format("{} at {}", say.duration_limit(hold.seconds), say.limit(hold.at)));
  std::string text = fmt::format("{}: P {}", listing(holds), parameter_text(qualified.parameter));
  if (qualified.holds.size() > 1 && qualified.carried && qualified.referred)
    text += fmt::format(" (carried along in this order {}, added at {} {}; the lower one is compared)",
                        parameter_text(*qualified.carried), temperature_text(qualified.referred_c, say),
                        parameter_text(*qualified.referred));
  return text;
}

std::string comparison_text(const QualifiedComparison& one, const Heat& heat) {
  const bool above = one.below < 0.0;
  std::string text =
      fmt::format("{} has the most, P {}: {} {} the {} qualified", one.channel,
                  at_least(one.is_least, parameter_text(one.parameter)), parameter_text(std::fabs(one.below)),
                  above ? "above" : "below", parameter_text(heat.qualified->parameter));
  if (one.is_least && !above)
    text += "; for part of the time the temperature is not known, so that it may be more";
  return text;
}

FigureTable qualified_table(const Heat& heat, const PrintedNumbers& say) {
  FigureTable table;
  table.title = "Tempering that the material was qualified for";
  table.facts = {{"Qualified for", qualified_text(*heat.qualified, say)}};
  if (heat.qualified->hours && heat.reference_c)
    table.facts.push_back(
        {"Equivalent time",
         fmt::format("{} h at {}, with C = {}", hours_text(heat.qualified->hours),
                     temperature_text(heat.reference_c, say), short_text(heat.constant, 3))});
  table.facts.push_back({"Source", heat.qualified->source + " (as the job gives it)"});
  for (const QualifiedComparison& one : heat.compared)
    table.facts.push_back(
        {one.weld ? "Weld " + *one.weld : std::string{"This weld"}, comparison_text(one, heat)});
  if (heat.compared.empty()) table.facts.push_back({"This weld", "no temperature is known"});
  table.notes.emplace_back(
      "A comparison of figures and not a verdict: all records named in the job are counted, and no others. "
      "The uncertainty of the readings is not counted.");
  return table;
}

}  // namespace

PublishedFormula tempering_formula(double constant) {
  return {
      fmt::format("P = T ({} + log10 t) / 1000, T in K (0 °C = 273.15 K), t in h", short_text(constant, 3)),
      constant == 20.0 ? "J. H. Hollomon, L. D. Jaffe, Trans. AIME 162 (1945); C = 20 as in EN 13445-4:2021"
                       : "J. H. Hollomon, L. D. Jaffe, Trans. AIME 162 (1945); C as the procedure gives it",
      "seen"};
}

std::vector<FigureTable> tempering_tables(const Heat& heat, const PrintedNumbers& say) {
  std::vector<FigureTable> tables;
  const auto welds = welds_of(heat.tempering);
  if (std::any_of(heat.tempering.begin(), heat.tempering.end(),
                  [](const ChannelHeat& one) { return one.parameter.has_value(); }))
    for (const auto& weld : welds) tables.push_back(tempering_table(heat, weld, welds.size() > 1, say));
  if (heat.qualified) tables.push_back(qualified_table(heat, say));
  return tables;
}

std::vector<LabelledText> tempering_summary(const Heat& heat) {
  std::vector<LabelledText> lines;
  const auto welds = welds_of(heat.tempering);
  for (const auto& weld : welds) {
    const ChannelHeat* least = nullptr;
    const ChannelHeat* most = nullptr;
    bool unknown = false;
    for (const ChannelHeat& one : heat.tempering) {
      if (one.weld != weld || !one.parameter || one.records.size() < 2) continue;
      if (least == nullptr || *one.parameter < *least->parameter) least = &one;
      if (most == nullptr || *one.parameter > *most->parameter) most = &one;
      unknown = unknown || not_all_known(one);
    }
    if (least == nullptr) continue;
    lines.push_back(
        {of_weld("Tempering, all records", weld, welds.size() > 1),
         fmt::format("P {} ({}) to {} ({}), C = {}{}", parameter_text(*least->parameter), least->channel,
                     parameter_text(*most->parameter), most->channel, short_text(heat.constant, 3),
                     unknown ? "; may be more, some time is not known" : "")});
  }
  for (const QualifiedComparison& one : heat.compared)
    lines.push_back(
        {of_weld("Qualified tempering", one.weld, heat.compared.size() > 1), comparison_text(one, heat)});
  return lines;
}

}  // namespace soakwright
