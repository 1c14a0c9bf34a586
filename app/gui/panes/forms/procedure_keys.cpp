// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/procedure_keys.h"

#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

using Kind = FormKey::Kind;

const QString kDegree = QStringLiteral("°%1");
const QString kRate = QStringLiteral("°%1/h");

std::vector<FormKey> with_source(std::vector<FormKey> keys) {
  keys.push_back({"source", tr("Source"), Kind::words, {}, tr("where the limits come from")});
  keys.push_back({"edition", tr("Edition"), Kind::words});
  keys.push_back({"clause", tr("Clause"), Kind::words});
  keys.push_back({"flag",
                  tr("Seen in print"),
                  Kind::choice,
                  {},
                  tr("whether the source was compared with its published text"),
                  {{tr("Seen in print"), QStringLiteral("seen")},
                   {tr("From memory"), QStringLiteral("memory")},
                   {tr("Proposed from a log"), QStringLiteral("proposal")}}});
  return keys;
}

const QString kRule = QStringLiteral("{ over = 5500, per = \"mm\", at_least = 55, at_most = 220 }");

std::vector<FormKey> ramp_keys(bool heat) {
  const QString rate = heat ? tr("Heating rate, at most") : tr("Cooling rate, at most");
  return {{"above", tr("Evaluated above"), Kind::value, kDegree},
          {"below", tr("Evaluated below"), Kind::value, kDegree},
          {"rate_max", rate, Kind::value, kRate,
           tr("a number, or a rule of the thickness such as %1").arg(kRule)},
          {"rate_min", heat ? tr("Heating rate, at least") : tr("Cooling rate, at least"), Kind::value, kRate,
           tr("held against the overall rate")},
          {"spread_max", tr("Spread, at most"), Kind::value, kDegree},
          {"spread_within",
           tr("Spread within"),
           Kind::value,
           {},
           tr("only thermocouples this close to each other along the work, such as 4.6 m")}};
}

std::vector<FormKey> hold_keys() {
  return {{"low", tr("Low limit"), Kind::value, kDegree},
          {"high", tr("High limit"), Kind::value, kDegree, tr("without it there is no upper limit")},
          {"time_min",
           tr("Hold time, at least"),
           Kind::value,
           {},
           tr("such as 95 min, or a rule of the thickness such as %1")
               .arg(QStringLiteral("{ points = [[\"6 mm\", \"15 min\"], [\"50 mm\", \"2 h\"]], beyond = "
                                   "\"15 min per 25 mm\" }"))},
          {"time_max", tr("Time at temperature, at most"), Kind::value, {}, tr("such as 4 h")},
          {"count",
           tr("Hold time counts"),
           Kind::choice,
           {},
           tr("one continuous hold, or all in-range time together"),
           {{tr("Continuous"), QStringLiteral("continuous")},
            {tr("Accumulated"), QStringLiteral("accumulated")}}},
          {"excursion_time_max", tr("Time out of range, at most"), Kind::value, {}, tr("such as 0 s")},
          {"spread_max", tr("Spread, at most"), Kind::value, kDegree},
          {"spread_within",
           tr("Spread within"),
           Kind::value,
           {},
           tr("only thermocouples this close to each other along the work, such as 4.6 m")},
          {"edge_fraction_min",
           tr("Edge reaches this share of the low limit"),
           Kind::value,
           {},
           tr("for thermocouples at the edge of the heated band: half is 0.5")},
          {"tempering_min",
           tr("Tempering parameter, at least"),
           Kind::value,
           {},
           tr("Hollomon–Jaffe parameter / 1000")},
          {"tempering_max",
           tr("Tempering parameter, at most"),
           Kind::value,
           {},
           tr("Hollomon–Jaffe parameter / 1000")}};
}

}  // namespace

std::vector<FormKey> procedure_keys(const std::string& table) {
  if (table == "evaluation")
    return {{"rate_window",
             tr("Rate window"),
             Kind::value,
             {},
             tr("width of the fit that measures a rate, such as 15 min")},
            {"decision_rule",
             tr("Decision rule"),
             Kind::choice,
             {},
             tr("simple, or guarded by the expanded uncertainty"),
             {{tr("Simple"), QStringLiteral("simple")}, {tr("Guarded"), QStringLiteral("guarded")}}},
            {"interpolate_max", tr("Longest gap interpolated"), Kind::value, {}, tr("such as 2 min")},
            {"excursion_allowed",
             tr("Excursion allowed"),
             Kind::value,
             {},
             tr("such as 3 min, or %1").arg(QStringLiteral("{ time = \"3 min\", depth = 5 }"))},
            {"in_range_min",
             tr("Shortest in-range time"),
             Kind::value,
             {},
             tr("shorter times at either end of a hold are disregarded, such as 2 min")},
            {"tempering_constant", tr("Constant of the tempering parameter"), Kind::value},
            {"tempering_reference", tr("Reference of equivalent hours"), Kind::value, kDegree}};
  if (table == "record")
    return {{"temperature_max", tr("Maximum temperature"), Kind::value, kDegree},
            {"start_temperature_max", tr("Temperature at start, at most"), Kind::value, kDegree},
            {"end_temperature_max", tr("Temperature at end, at most"), Kind::value, kDegree},
            {"gap_max", tr("Longest gap between readings"), Kind::value, {}, tr("such as 5 min")},
            {"sampling_interval_max", tr("Sampling interval, at most"), Kind::value, {}, tr("such as 60 s")},
            {"thermocouples_min", tr("Thermocouples with valid readings, at least"), Kind::value}};
  return with_source({{"number", tr("Number"), Kind::words},
                      {"revision", tr("Revision"), Kind::words},
                      {"title", tr("Title"), Kind::words},
                      {"unit",
                       tr("Unit"),
                       Kind::choice,
                       {},
                       tr("of every temperature and rate in the file"),
                       {{tr("°C"), QStringLiteral("C")}, {tr("°F"), QStringLiteral("F")}}},
                      {"thickness", tr("Thickness"), Kind::value, {}, tr("such as 38 mm or 1.5 in")}});
}

const std::vector<std::pair<std::string, QString>>& stage_kinds() {
  static const std::vector<std::pair<std::string, QString>> kinds = {
      {"heat", tr("Heat")}, {"hold", tr("Hold")}, {"cool", tr("Cool")}, {"maintain", tr("Maintain")}};
  return kinds;
}

std::vector<FormKey> stage_keys(const std::string& kind) {
  if (kind == "heat" || kind == "cool") return with_source(ramp_keys(kind == "heat"));
  if (kind == "hold") return with_source(hold_keys());
  if (kind == "maintain")
    return with_source({{"low", tr("Low limit"), Kind::value, kDegree},
                        {"high", tr("High limit"), Kind::value, kDegree},
                        {"during", tr("During"), Kind::words, {}, tr("a period of the job")}});
  std::vector<FormKey> only;
  FormKey key{"kind", tr("Kind"), Kind::choice};
  for (const auto& [word, name] : stage_kinds()) key.choices.emplace_back(name, QString::fromStdString(word));
  only.push_back(key);
  return only;
}

}  // namespace soakwright::gui
