// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/channel_groups.h"

#include <functional>
#include <utility>

#include "app/gui/texts/window_text.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {

std::vector<ChannelGroup> channel_groups(const Report& report) {
  const std::vector<Channel>& channels = report.chart.record->channels;
  std::vector<ChannelGroup> groups;
  const auto add = [&](QString name, const std::function<bool(const ChartTrace&)>& belongs) {
    ChannelGroup group{std::move(name), std::vector<bool>(channels.size())};
    std::size_t members = 0;
    for (const ChartTrace& trace : report.chart.traces) {
      group.channels[trace.channel] = belongs(trace);
      members += group.channels[trace.channel] ? 1 : 0;
    }
    if (members > 0 && members < report.chart.traces.size()) groups.push_back(std::move(group));
  };
  using Role = ChartTrace::Role;
  add(tr("evaluated thermocouples"), [](const ChartTrace& one) { return one.role == Role::evaluated; });
  add(tr("thermocouples at the edge of the heated band"),
      [](const ChartTrace& one) { return one.role == Role::edge; });
  add(tr("spares"), [](const ChartTrace& one) { return one.role == Role::spare; });
  add(tr("channels that are not evaluated"), [](const ChartTrace& one) {
    return one.role == Role::air || one.role == Role::set_point || one.role == Role::off;
  });
  for (const WeldRow& weld : report.welds)
    add(tr("weld %1").arg(pdf::shown_text(weld.number)), [&](const ChartTrace& one) {
      const Channel& channel = channels[one.channel];
      return channel.weld == weld.number || (!channel.weld && channel.evaluated());
    });
  return groups;
}

}  // namespace soakwright::gui
