// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/draft_comments.h"

#include <string_view>
#include <utility>
#include <variant>

#include <fmt/format.h>

#include "core/units/printed_quantity.h"
#include "core/wording/printed_numbers.h"

namespace soakwright {
namespace {

/// `text` in lines of at most 100 bytes, broken at spaces.
std::vector<std::string> wrapped(std::string_view text) {
  constexpr std::size_t kWidth = 100;
  std::vector<std::string> lines;
  while (!text.empty()) {
    std::size_t end = text.size();
    if (end > kWidth) {
      end = text.rfind(' ', kWidth);
      if (end == std::string_view::npos) end = text.find(' ');
      if (end == std::string_view::npos) end = text.size();
    }
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end);
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  }
  return lines;
}

std::vector<std::string> wrapped_all(const std::vector<std::string>& texts) {
  std::vector<std::string> lines;
  for (const std::string& text : texts)
    for (std::string& line : wrapped(text)) lines.push_back(std::move(line));
  return lines;
}

/// Limits in the unit of the procedure.
class Say {
 public:
  explicit Say(const Procedure& procedure) : procedure_(procedure) { format_.unit = procedure.unit; }

  [[nodiscard]] std::string operator()(const Quantity& quantity) const {
    return printed_limit(quantity, format_);
  }
  [[nodiscard]] std::string thickness() const {
    if (!procedure_.thickness) return {};
    const double inches = procedure_.thickness->in(LengthUnit::inch);
    return format_.unit == TemperatureUnit::fahrenheit
               ? short_text(inches, 3) + " in"
               : short_text(procedure_.thickness->millimetres(), 2) + " mm";
  }

  [[nodiscard]] std::string rate(const RateLimit& limit) const {
    if (const auto* plain = std::get_if<HeatingRate>(&limit)) return (*this)(*plain);
    const auto& rule = std::get<RateRule>(limit);
    std::string text = fmt::format("{} divided by the thickness in {}", (*this)(rule.over),
                                   rule.per == LengthUnit::inch ? "inches" : "millimetres");
    if (rule.at_least) text += ", but never below " + (*this)(*rule.at_least);
    if (rule.at_most) text += (rule.at_least ? " or above " : ", but never above ") + (*this)(*rule.at_most);
    if (const auto value = limit_at(limit, procedure_.thickness))
      text += fmt::format(". For {} that is {}", thickness(), (*this)(*value));
    return text;
  }
  [[nodiscard]] std::string time(const TimeLimit& limit) const {
    const auto value = limit_at(limit, procedure_.thickness);
    if (!value) return "the time below";
    const std::string text = (*this)(Duration::of_seconds(*value));
    return std::holds_alternative<double>(limit) ? text : text + " (for " + thickness() + ")";
  }

 private:
  const Procedure& procedure_;
  QuantityFormat format_;
};

std::string spread_sentence(const Say& say, TemperatureDifference most, std::optional<double> within_m) {
  return fmt::format("no two thermocouples{} differ by more than {}.",
                     within_m ? " within the distance below" : "", say(most));
}

void add_flag(const Provenance& provenance, std::vector<std::string>& texts) {
  if (provenance.flag == Provenance::Flag::memory)
    texts.emplace_back("From memory, check against your edition.");
  if (provenance.flag == Provenance::Flag::seen) texts.emplace_back("Seen in print.");
}

void describe(const Say& say, const RampStage& ramp, std::vector<std::string>& texts) {
  const bool heat = ramp.direction == RampStage::Direction::heat;
  std::string where = heat ? "Heating" : "Cooling";
  if (ramp.above) where += (heat ? ", at and above " : ", down to ") + say(*ramp.above);
  if (ramp.rate_max)
    texts.push_back(fmt::format("{}: no thermocouple {} faster than {}.", where, heat ? "heats" : "cools",
                                say.rate(*ramp.rate_max)));
  if (ramp.spread_max) {
    const std::string sentence = spread_sentence(say, *ramp.spread_max, ramp.spread_within_m);
    texts.push_back(ramp.rate_max ? "At any time, " + sentence : where + ": " + sentence);
  }
}

void describe(const Say& say, const HoldStage& hold, std::vector<std::string>& texts) {
  const std::string range = hold.high ? fmt::format("between {} and {}", say(hold.low), say(*hold.high))
                                      : fmt::format("at or above {}", say(hold.low));
  texts.push_back(hold.time_min ? fmt::format("Hold: all thermocouples are {} together for at least {}.",
                                              range, say.time(*hold.time_min))
                                : fmt::format("Hold: all thermocouples are {} together.", range));
  if (hold.spread_max)
    texts.push_back("At any time, " + spread_sentence(say, *hold.spread_max, hold.spread_within_m));
}

void describe(const Say& say, const MaintainStage& maintain, std::vector<std::string>& texts) {
  texts.push_back(fmt::format(
      "Preheat: all thermocouples stay at or above {} through the period \"{}\", which the job names.",
      say(maintain.low), maintain.during));
}

}  // namespace

std::vector<std::string> drafted_head(const PublishedRule& rule, const std::string& material) {
  std::vector<std::string> texts{
      fmt::format(
          "A draft from the published rule {}. Read each limit against your own edition before use, and "
          "give the procedure your own number, revision and title.",
          rule.name),
      "Further limits of your procedure, such as gap_max, temperature_max or thermocouples_min, are not part "
      "of "
      "the rule: add them."};
  if (!material.empty()) texts.push_back(fmt::format("Material: {}.", material));
  if (rule.remark) texts.push_back(*rule.remark);
  return wrapped_all(texts);
}

std::vector<std::string> proposed_head(const std::string& log) {
  return wrapped_all(
      {fmt::format("A proposal from what the log {} shows, with generous round limits. It is no requirement: "
                   "edit every limit to what your procedure specifies, and delete the lines source and flag "
                   "of each part that you have checked.",
                   log)});
}

std::vector<std::string> record_comments(const Procedure& procedure, bool proposed) {
  const Say say{procedure};
  std::vector<std::string> texts;
  if (const auto& most = procedure.record_limits.start_temperature_max)
    texts.push_back(fmt::format("Loading: no thermocouple is above {} at the first reading.", say(*most)));
  if (const auto& most = procedure.record_limits.temperature_max)
    texts.push_back(fmt::format("No thermocouple is above {} at any time.", say(*most)));
  if (!proposed) add_flag(procedure.provenance, texts);
  return wrapped_all(texts);
}

std::vector<std::string> stage_comments(const Procedure& procedure, const Stage& stage,
                                        const DraftedStage& drafted) {
  const Say say{procedure};
  std::vector<std::string> texts;
  std::visit([&](const auto& specified) { describe(say, specified, texts); }, stage.specified);
  if (drafted.worked_out_for)
    texts.push_back(
        fmt::format("Worked out for {}: the rule has other limits for other thicknesses. Draft again for "
                    "another thickness.",
                    say.thickness()));
  if (drafted.lower_by)
    texts.push_back(
        fmt::format("The lower temperature of the rule, {} below the usual one, for a longer time.",
                    say(*drafted.lower_by)));
  if (drafted.hold_by_user)
    texts.emplace_back(
        "Temperature and time were given by the user who drafted this; they are not the rule's.");
  else
    add_flag(stage.provenance, texts);
  if (drafted.remark) texts.push_back(*drafted.remark);
  return wrapped_all(texts);
}

std::string given_hold_source(const PublishedRule& rule, bool spread_of_rule) {
  const std::string source = rule.provenance.source.value_or(std::string{});
  return spread_of_rule ? fmt::format("temperature and time: given by the user; spread: {}", source)
                        : fmt::format("given by the user, not by {}", source);
}

std::string proposal_title(const std::string& log) {
  return "Proposal from " + log + ", to be edited before use";
}

std::string proposal_source() { return "proposed from a recorded cycle, not a requirement"; }

std::string flag_text(Provenance::Flag flag) {
  switch (flag) {
    case Provenance::Flag::seen:
      return "seen in print";
    case Provenance::Flag::memory:
      return "from memory, check against your edition";
    case Provenance::Flag::proposal:
      return proposal_source();
  }
  return {};
}

}  // namespace soakwright
