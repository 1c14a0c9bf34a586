// SPDX-License-Identifier: GPL-3.0-or-later
// What the heat did to the metal over the whole recorded curve: tempering, and hydrogen that is left. Facts
// beside the verdicts; none of them decides one.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/procedure/heat/diffusivity.h"
#include "core/procedure/job/job.h"

namespace soakwright {

/// What one record gave a thermocouple by itself.
struct RecordTempering {
  int cycle = 1;
  std::string file;
  bool has_channel = true;          ///< the record has the thermocouple
  std::optional<double> parameter;  ///< Hollomon-Jaffe parameter / 1000; none where no step is known
  std::optional<double> hours;      ///< worth the same at Heat::reference_c
  double not_known_s = 0.0;  ///< of the record, excluded time included; all of it where it has no channel
};

/// The tempering of one evaluated thermocouple over all records of its weld: at least this, where time is not
/// known.
struct ChannelHeat {
  std::optional<std::string> weld;
  std::string channel;
  std::optional<double> parameter;  ///< carried along from record to record, in order
  std::optional<double> hours;      ///< worth the same at Heat::reference_c
  /// The other published way: the hours of the records added at Heat::reference_c, and their parameter.
  std::optional<double> referred_hours, referred_parameter;
  double not_known_s = 0.0;
  bool in_all_records = true;
  std::vector<RecordTempering> records;  ///< in order, this record last
};

/// What the material was qualified for, from the job.
struct QualifiedTempering {
  std::optional<double> given;       ///< the parameter as the job gives it, or
  std::vector<QualifiedHold> holds;  ///< as the job gives them
  double parameter = 0.0;            ///< what is compared: of the two below the lower, or as given
  std::optional<double> carried;     ///< of the holds, carried along in their order
  std::optional<double> referred;    ///< of the holds, added at `referred_c`
  std::optional<double> referred_c;  ///< the hottest of the holds
  std::optional<double> hours;       ///< `parameter` at Heat::reference_c
  std::string source;
};

/// The thermocouple of a weld with the highest tempering, beside what the material was qualified for.
struct QualifiedComparison {
  std::optional<std::string> weld;
  std::string channel;
  double parameter = 0.0;
  double below = 0.0;     ///< the qualified parameter less this one; negative where it is above
  bool is_least = false;  ///< time is not known, or a record does not have a thermocouple: it may be higher
};

/// Hydrogen left in one thermocouple's place, with one diffusivity.
struct HydrogenLeft {
  std::size_t diffusivity = 0;          ///< index into Heat::diffusivities
  double fourier = 0.0;                 ///< F
  double mean = 1.0, centre = 1.0;      ///< shares of what was there at the start
  double below_s = 0.0, above_s = 0.0;  ///< not counted: colder, hotter than the diffusivity holds
};
struct ChannelHydrogen {
  std::string channel;
  std::vector<HydrogenLeft> by_diffusivity;  ///< the chosen one first
  /// Of the mean, over the diffusivities that hold as hot as the curve was; of all, where none does.
  double least = 1.0, most = 1.0;
  double mean_at_twentieth = 1.0;  ///< with a twentieth of the chosen diffusivity
  double not_known_s = 0.0;        ///< not counted: no temperature is known, or a person excluded it
  bool in_all_parts = true;
};
struct WeldHydrogen {
  std::optional<std::string> weld;
  double size_mm = 0.0;                   ///< thickness or diameter
  double from_s = 0.0, to_s = 0.0;        ///< of this record
  std::size_t parts = 0;                  ///< earlier parts of the same cycle that are counted too
  std::vector<ChannelHydrogen> channels;  ///< the most hydrogen left first
};

struct Heat {
  double constant = 20.0;             ///< C of the parameter
  std::optional<double> reference_c;  ///< where equivalent hours are given
  std::vector<ChannelHeat> tempering;
  std::optional<QualifiedTempering> qualified;
  std::vector<QualifiedComparison> compared;  ///< one for each weld with a known parameter
  std::optional<HydrogenShape> shape;         ///< none where the job has no [hydrogen]
  std::optional<std::string> after;
  std::vector<Diffusivity> diffusivities;  ///< the chosen one, then the published ones that it is not
  std::vector<WeldHydrogen> hydrogen;
};

}  // namespace soakwright
