// SPDX-License-Identifier: GPL-3.0-or-later
// Diffusivities and activation energies with their unit behind them, from the text of a job file.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace soakwright {

/// `5.1e-5 cm2/s`, `5.1e-9 m2/s`, `5.1e-3 mm2/s` (also with ²), in m²/s. Returns nullopt for anything else.
std::optional<double> parse_diffusivity(std::string_view text);
/// `22.3 kJ/mol`, `22300 J/mol`, in J/mol. Returns nullopt for anything else.
std::optional<double> parse_activation_energy(std::string_view text);

/// "5.1e-5 cm²/s": two digits behind the point, none of them a zero alone.
std::string diffusivity_text(double m2_per_s);

}  // namespace soakwright
