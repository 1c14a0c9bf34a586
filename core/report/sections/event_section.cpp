// SPDX-License-Identifier: GPL-3.0-or-later
// The findings by event, each with what can be drawn of it.
#include <algorithm>

#include <fmt/format.h>

#include "core/report/finding_events.h"
#include "core/report/sections/sections.h"
#include "core/wording/certificate_words.h"

namespace soakwright {
namespace {

constexpr std::size_t kMostTraces = 8;  // of one small chart
constexpr std::size_t kSaidInFull = 3;  // findings of one limit, before "the same for …"

void add_once(std::vector<std::string>& list, const std::string& text) {
  if (!text.empty() && std::find(list.begin(), list.end(), text) == list.end()) list.push_back(text);
}

std::optional<std::size_t> trace_named(const Chart& chart, const std::string& name) {
  for (std::size_t i = 0; i < chart.traces.size(); ++i)
    if (chart.traces[i].name == name) return i;
  return std::nullopt;
}

/// The requirement's own evidence where it is of this finding: it has the fitted line, the points.
const Evidence* own_evidence(const Finding& finding, const RequirementRow* row) {
  if (row == nullptr || row->verdict == Verdict::met || finding.over_whole_ramp) return nullptr;
  const Evidence& evidence = row->evidence;
  const auto from = evidence.from_s ? evidence.from_s : evidence.at_s;
  const auto to = evidence.to_s ? evidence.to_s : evidence.at_s;
  if (!from || !to || !finding.from_s) return nullptr;
  const double end = finding.to_s.value_or(*finding.from_s);
  return *from <= end && *to >= *finding.from_s ? &evidence : nullptr;
}

/// "a" … "z", "aa" …
std::string letter_of(std::size_t n) {
  constexpr std::size_t kLetters = 26;
  std::string letters;
  for (++n; n > 0; n = (n - 1) / kLetters)
    letters.insert(letters.begin(), static_cast<char>('a' + (n - 1) % kLetters));
  return letters;
}

std::string with_extreme(const std::string& channel, const std::string& extreme) {
  return extreme.empty() ? channel : fmt::format("{} ({})", channel, extreme);
}

class EventMaker {
 public:
  EventMaker(const ReportContext& context, const Report& report) : context_(context), report_(report) {}

  EventRow made(std::size_t number, const std::vector<std::size_t>& members) {
    EventRow event;
    event.tag = fmt::format("{}", number);
    event.findings = members;
    event.kind = kind_of(members);
    event.kind_text = finding_kind_text(event.kind);
    std::vector<std::string> channels;
    std::optional<double> from_s, to_s;
    for (const std::size_t member : members) {
      const FindingRow& row = report_.findings[member];
      const Finding& finding = findings()[member];
      const std::string name = title_of(row);
      if (std::find(event.requirements.begin(), event.requirements.end(), name) == event.requirements.end()) {
        event.requirements.push_back(name);
        event.ids.push_back(row.id);
      }
      if (finding.channel) add_once(channels, *finding.channel);
      if (finding.from_s) from_s = from_s ? std::min(*from_s, *finding.from_s) : *finding.from_s;
      if (const auto end = finding.to_s ? finding.to_s : finding.from_s)
        to_s = to_s ? std::max(*to_s, *end) : *end;
      add_once(event.dispositions, row.disposition);
      event.open = event.open || row.open;
      // A note about a channel, such as a spare that took over, has no limit that a value could be worst for.
      const bool has_worst = row.kind != Finding::Kind::note || !finding.requirement.empty();
      if (event.worst.empty() && row.kind == event.kind && has_worst) event.worst = row.extreme;
    }
    event.where = listing(channels);
    event.when = context_.say.when(std::nullopt, from_s, to_s);
    event.texts = texts_of(members);
    if (from_s && to_s) {
      event.remarks = remarks_in(*from_s, *to_s);
      for (const std::size_t member : members) add_once(channels, spare_of(findings()[member]));
      event.evidence = evidence_of_event(members, channels, *from_s, *to_s);
    }
    return event;
  }

 private:
  [[nodiscard]] const std::vector<Finding>& findings() const { return context_.analysis.verdicts->findings; }

  /// The spare whose take-over the note is about: it is drawn with the thermocouple that it replaced. Empty
  /// for any other finding.
  [[nodiscard]] std::string spare_of(const Finding& finding) const {
    const bool note = finding.kind == Finding::Kind::note && finding.requirement.empty();
    if (!note || !finding.channel || !finding.suspects.empty()) return {};
    for (const Replacement& replacement : context_.analysis.verdicts->replaced)
      if (replacement.channel == *finding.channel && replacement.from_s == finding.from_s)
        return replacement.by;
    return {};
  }

  [[nodiscard]] const RequirementRow* requirement_of_row(const FindingRow& row) const {
    return row.requirement ? &report_.requirements[*row.requirement] : nullptr;
  }

  [[nodiscard]] Finding::Kind kind_of(const std::vector<std::size_t>& members) const {
    Finding::Kind kind = Finding::Kind::note;
    for (const std::size_t member : members) kind = std::min(kind, findings()[member].kind);
    return kind;
  }

  [[nodiscard]] std::string title_of(const FindingRow& row) const {
    std::string name = row.label;
    if (!row.stage.empty()) name += (name.empty() ? "" : ", ") + row.stage;
    if (!row.weld.empty() && report_.welds.size() > 1) name += (name.empty() ? "" : ", ") + row.weld;
    return name;
  }

  /// Of many findings of one limit the first is said, and whom else it concerns.
  [[nodiscard]] std::vector<std::string> texts_of(const std::vector<std::size_t>& members) const {
    std::vector<std::string> texts;
    std::vector<char> said(members.size());
    for (std::size_t i = 0; i < members.size(); ++i) {
      if (said[i] != 0) continue;
      const Finding& first = findings()[members[i]];
      std::vector<std::size_t> alike;
      for (std::size_t j = i; j < members.size(); ++j) {
        const Finding& other = findings()[members[j]];
        if (other.requirement == first.requirement && other.weld == first.weld && other.kind == first.kind)
          alike.push_back(j);
      }
      const bool in_full = alike.size() <= kSaidInFull || !first.channel;
      std::vector<std::string> others;
      for (std::size_t n = 0; n < alike.size(); ++n) {
        said[alike[n]] = 1;
        const std::size_t member = members[alike[n]];
        if (in_full || n == 0 || !findings()[member].channel)
          add_once(texts, report_.findings[member].text);
        else
          add_once(others, with_extreme(*findings()[member].channel, report_.findings[member].extreme));
      }
      if (!others.empty()) texts.push_back(certificate_words::same_for(others));
    }
    return texts;
  }

  [[nodiscard]] std::vector<std::string> remarks_in(double from_s, double to_s) const {
    std::vector<std::string> remarks;
    const double room_s = 2.0 * context_.analysis.record->interval_s;
    for (const Remark& remark : context_.analysis.record->remarks)
      if (remark.at_s >= from_s - room_s && remark.at_s <= to_s + room_s)
        remarks.push_back(context_.say.moment(remark.at_s) + ": " + remark.text);
    return remarks;
  }

  [[nodiscard]] std::optional<Evidence> evidence_of_event(const std::vector<std::size_t>& members,
                                                          const std::vector<std::string>& channels,
                                                          double from_s, double to_s) const {
    Evidence evidence;
    for (const std::size_t member : members) {
      const RequirementRow* row = requirement_of_row(report_.findings[member]);
      if (const Evidence* own = own_evidence(findings()[member], row)) {
        evidence = *own;
        break;
      }
    }
    for (const std::string& channel : channels)
      if (const auto trace = trace_named(report_.chart, channel);
          trace && evidence.traces.size() < kMostTraces &&
          std::find(evidence.traces.begin(), evidence.traces.end(), *trace) == evidence.traces.end())
        evidence.traces.push_back(*trace);
    if (!evidence.fit) {
      evidence.from_s = from_s;
      evidence.to_s = to_s;
    }
    return evidence;
  }

  const ReportContext& context_;
  const Report& report_;
};

}  // namespace

void add_events(const ReportContext& context, Report& report) {
  if (!context.analysis.verdicts) return;
  const std::vector<Finding>& findings = context.analysis.verdicts->findings;
  const auto events = finding_events(findings, context.analysis.record->interval_s);
  std::vector<std::size_t> event_of(findings.size());
  for (std::size_t e = 0; e < events.size(); ++e)
    for (std::size_t n = 0; n < events[e].size(); ++n) {
      const std::size_t finding = events[e][n];
      event_of[finding] = e + 1;
      report.findings[finding].tag = fmt::format("{}", e + 1);
      if (events[e].size() > 1) report.findings[finding].tag += letter_of(n);
    }
  for (ChartMark& mark : report.chart.marks) {
    mark.event = event_of[mark.finding];
    mark.tag = fmt::format("{}", mark.event);
  }
  EventMaker maker(context, report);
  for (std::size_t e = 0; e < events.size(); ++e) report.events.push_back(maker.made(e + 1, events[e]));
}

}  // namespace soakwright
