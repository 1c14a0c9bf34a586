// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/heat_json.h"

#include "core/report/json/preheat_json.h"
#include "core/wording/sections/heat_words.h"

namespace soakwright {
namespace {

using Layout = JsonWriter::Layout;

void boolean(Members& members, std::string_view name, bool value) {
  members.json().key(name);
  members.json().boolean(value);
}

void write_formula(Members& members, const PublishedFormula& formula) {
  members.text("formula", formula.formula);
  members.text("source", formula.source);
  members.text("flag", formula.flag);
}

void write_tempering(Members& members, const Heat& heat) {
  members.object("tempering", Layout::lines);
  members.number("constant", heat.constant);
  members.text("method", kTemperingMethod);
  write_formula(members, tempering_formula(heat.constant));
  members.number("hours_at", heat.reference_c);
  members.objects("channels", heat.tempering, [&](const ChannelHeat& one) {
    members.text_or_null("weld", one.weld);
    members.text("channel", one.channel);
    members.number("parameter", one.parameter);
    members.number("hours", one.hours);
    members.number("referred_sum", one.referred_parameter);
    members.number("referred_hours", one.referred_hours);
    members.number("not_known_s", one.not_known_s);
    boolean(members, "in_all_records", one.in_all_records);
    members.inner_objects("records", one.records, [&](const RecordTempering& record) {
      members.integer("cycle", static_cast<std::uint64_t>(record.cycle));
      members.text("file", record.file);
      boolean(members, "has_channel", record.has_channel);
      members.number("parameter", record.parameter);
      members.number("hours", record.hours);
      members.number("not_known_s", record.not_known_s);
    });
  });
  members.json().end_object();
}

void write_qualified(Members& members, const Heat& heat) {
  if (!heat.qualified) return members.null("qualified");
  const QualifiedTempering& qualified = *heat.qualified;
  members.object("qualified", Layout::lines);
  members.number("parameter", qualified.parameter);
  members.text("by", qualified.given ? "parameter" : "holds");
  members.inner_objects("holds", qualified.holds, [&](const QualifiedHold& hold) {
    members.number("temperature", hold.at.celsius());
    members.number("time_s", hold.seconds);
  });
  members.number("carried_along", qualified.carried);
  members.number("referred_sum", qualified.referred);
  members.number("referred_to", qualified.referred_c);
  members.number("hours", qualified.hours);
  members.text("source", qualified.source);
  members.objects("welds", heat.compared, [&](const QualifiedComparison& one) {
    members.text_or_null("weld", one.weld);
    members.text("channel", one.channel);
    members.number("parameter", one.parameter);
    members.number("below_qualified", one.below);
    boolean(members, "may_be_more", one.is_least);
  });
  members.json().end_object();
}

void write_left(Members& members, const Heat& heat, const HydrogenLeft& left) {
  members.text("diffusivity", diffusivity_name(heat.diffusivities[left.diffusivity]));
  members.number("fourier", left.fourier);
  members.number("mean", left.mean);
  members.number("centre", left.centre);
  members.number("below_s", left.below_s);
  members.number("above_s", left.above_s);
}

void write_hydrogen(Members& members, const Heat& heat) {
  if (!heat.shape) return members.null("hydrogen");
  members.object("hydrogen", Layout::lines);
  members.text("shape", *heat.shape == HydrogenShape::plate ? "plate" : "cylinder");
  write_formula(members, hydrogen_formula(*heat.shape));
  members.text("caution", hydrogen_caution());
  members.text_or_null("after", heat.after);
  members.objects("diffusivities", heat.diffusivities, [&](const Diffusivity& one) {
    members.text("name", diffusivity_name(one));
    members.number("temperature_min", one.low.celsius());
    members.number("temperature_max", one.high.celsius());
    members.text("source", diffusivity_source(one));
    const bool published = std::holds_alternative<PublishedDiffusivity>(one.law);
    members.text_or_null("flag", published ? std::optional<std::string>{"seen"} : std::nullopt);
  });
  members.objects("welds", heat.hydrogen, [&](const WeldHydrogen& place) {
    members.text_or_null("weld", place.weld);
    members.number("size_mm", place.size_mm);
    members.moment("from", place.from_s);
    members.moment("to", place.to_s);
    members.integer("earlier_parts", place.parts);
    members.inner_objects("channels", place.channels, [&](const ChannelHydrogen& channel) {
      members.text("channel", channel.channel);
      members.number("left", channel.by_diffusivity.front().mean);
      members.number("least", channel.least);
      members.number("most", channel.most);
      members.number("left_at_twentieth", channel.mean_at_twentieth);
      members.number("not_known_s", channel.not_known_s);
      boolean(members, "in_all_parts", channel.in_all_parts);
      members.inner_objects("by_diffusivity", channel.by_diffusivity,
                            [&](const HydrogenLeft& left) { write_left(members, heat, left); });
    });
  });
  members.json().end_object();
}

}  // namespace

void write_heat(Members& members, const Analysis& analysis) {
  if (!analysis.verdicts && !has_preheat_or_bands(analysis)) return members.null("heat");
  members.object("heat", Layout::lines);
  if (analysis.verdicts) {
    const Heat& heat = analysis.verdicts->heat;
    write_tempering(members, heat);
    write_qualified(members, heat);
    write_hydrogen(members, heat);
  } else {
    for (const char* name : {"tempering", "qualified", "hydrogen"}) members.null(name);
  }
  write_preheat(members, analysis);
  write_bands(members, analysis);
  members.json().end_object();
}

}  // namespace soakwright
