#include "core/evaluate/shortfall.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/evaluate/sentences.h"
#include "core/measure/tempering.h"
#include "core/measure/trace.h"

namespace soakwright {
namespace {

/// One requirement and how far it is from being met.
class Need {
 public:
  Need(const Record& record, const Procedure& procedure, const Requirement& requirement)
      : record_(record), procedure_(procedure), asked_(requirement) {}

  [[nodiscard]] std::string say() const {
    if (asked_.verdict == Verdict::met) return {};
    if (asked_.kind == RequirementKind::hold_time) return say_hold_time();
    if (asked_.kind == RequirementKind::calibration)
      return asked_.measured ? "certificates would have had to be valid on the record's last day"
                             : "the log would have to carry dates";
    if (const std::string overall = say_overall_too_fast(); !overall.empty()) return overall;
    if (!asked_.measured) return say_not_measured();
    // Within the limit as far as the record shows: what is missing is the rest of it.
    if (!asked_.margin || *asked_.margin >= 0.0)
      return asked_.margin ? "nothing shown is beyond the limit: the record would have to show the rest, see "
                             "the findings"
                           : "the tolerance of the thermocouple would have to be known at that temperature";
    return say_short();
  }

 private:
  /// What is short of the limit, in its own unit.
  [[nodiscard]] double by() const { return -*asked_.margin; }
  [[nodiscard]] std::string name() const { return asked_.channel.value_or("a thermocouple"); }
  [[nodiscard]] std::string moment() const {
    return asked_.at_s ? " at " + say_moment(record_, *asked_.at_s) : std::string{};
  }
  [[nodiscard]] std::string span() const {
    return asked_.from_s && asked_.to_s ? " from " + say_span(record_, *asked_.from_s, *asked_.to_s)
                                        : std::string{};
  }
  [[nodiscard]] std::string for_certain() const {
    return asked_.uncertainty ? ", U included" : std::string{};
  }
  [[nodiscard]] const HoldStage* hold() const {
    if (asked_.stage == 0 || asked_.stage > procedure_.stages.size()) return nullptr;
    return std::get_if<HoldStage>(&procedure_.stages[asked_.stage - 1].asked);
  }

  [[nodiscard]] std::string say_not_measured() const {
    if (asked_.kind == RequirementKind::maintain) return "the job would have to name that period";
    if (asked_.kind == RequirementKind::over || asked_.kind == RequirementKind::excursion_time)
      return "the thermocouples would have had to be in the range together";
    if (asked_.kind == RequirementKind::edge)
      return "a thermocouple at the edge of the heated band would have to be known within the hold";
    return "the record would have to show it";
  }

  [[nodiscard]] std::string say_short() const {
    switch (asked_.kind) {
      case RequirementKind::temperature_max:
      case RequirementKind::start:
      case RequirementKind::end:
      case RequirementKind::over:
        return fmt::format("{} would have had to be {} cooler{}{}", name(), say_kelvin(by()), moment(),
                           for_certain());
      case RequirementKind::spread:
        return fmt::format("{} and {} would have had to be {} closer together{}{}", name(),
                           asked_.channel_2.value_or("another"), say_kelvin(by()), moment(), for_certain());
      case RequirementKind::heating_rate:
      case RequirementKind::cooling_rate:
        return say_rate_need();
      case RequirementKind::heating_rate_min:
      case RequirementKind::cooling_rate_min:
        return say_slow_ramp();
      case RequirementKind::hold_time_max:
        return fmt::format("{} would have had to be at or above the range's lower edge for {} less{}", name(),
                           say_time(by()), for_certain());
      case RequirementKind::excursion_time:
        return fmt::format("the thermocouples would have had to be out of the range for {} less{}{}",
                           say_time(by()), span(), for_certain());
      case RequirementKind::maintain:
        return fmt::format(
            "the thermocouples would have had to stay in the range for the {} that they were out of "
            "it{}",
            say_time(by()), for_certain());
      case RequirementKind::gap:
        return fmt::format("a row would have had to stand between {}, at most {} after the one before",
                           say_span(record_, asked_.from_s.value_or(0.0), asked_.to_s.value_or(0.0)),
                           say_time(asked_.limit));
      case RequirementKind::interval:
        return fmt::format("the log would have had to write a row every {} rather than every {}",
                           say_time(asked_.limit), say_time(*asked_.measured));
      case RequirementKind::thermocouples:
        return fmt::format("{:.0f} more {} would have had to be known{}", by(),
                           by() < 1.5 ? "thermocouple" : "thermocouples", span());
      case RequirementKind::edge:
        return say_edge();
      case RequirementKind::tempering_min:
      case RequirementKind::tempering_max:
        return say_tempering();
      case RequirementKind::hold_time:
      case RequirementKind::calibration:
        break;
    }
    return {};
  }

  /// What the limit leaves for the window, in kelvin over its time.
  [[nodiscard]] std::string say_rate_need() const {
    const double window_s = asked_.to_s.value_or(0.0) - asked_.from_s.value_or(0.0);
    const bool heat = asked_.kind == RequirementKind::heating_rate;
    const double allowed = *asked_.measured - by();
    return fmt::format("{} would have had to {} by no more than {} in the {} about {}, where it {} by {}{}",
                       name(), heat ? "rise" : "fall", say_kelvin(std::max(0.0, allowed) * window_s / 3600.0),
                       say_time(window_s), say_moment(record_, asked_.at_s.value_or(0.0)),
                       heat ? "rose" : "fell", say_kelvin(*asked_.measured * window_s / 3600.0),
                       asked_.uncertainty ? "; noise and U included" : "");
  }

  /// Where no window is above the limit, and the mean over the whole ramp is; empty otherwise.
  [[nodiscard]] std::string say_overall_too_fast() const {
    const bool rate =
        asked_.kind == RequirementKind::heating_rate || asked_.kind == RequirementKind::cooling_rate;
    const bool window_above = asked_.margin && *asked_.margin < 0.0;
    if (!rate || asked_.verdict != Verdict::not_met || window_above) return {};
    const std::pair<std::string, std::optional<double>>* fastest = nullptr;
    for (const auto& channel : asked_.overall)
      if (channel.second && (fastest == nullptr || *channel.second > *fastest->second)) fastest = &channel;
    if (fastest == nullptr || *fastest->second <= asked_.limit) return {};
    return fmt::format("{} is {} too fast over the whole ramp", fastest->first,
                       say_rate(*fastest->second - asked_.limit));
  }

  [[nodiscard]] std::string say_slow_ramp() const {
    const double took_s = asked_.to_s.value_or(0.0) - asked_.from_s.value_or(0.0);
    const double wanted = *asked_.measured + by();
    return fmt::format("{} would have had to run through the ramp in {} rather than in {}{}", name(),
                       say_time(took_s * *asked_.measured / wanted), say_time(took_s), for_certain());
  }

  [[nodiscard]] std::string say_edge() const {
    const HoldStage* asked = hold();
    const double low = asked != nullptr ? std::fabs(asked->low.in(procedure_.unit)) : 0.0;
    const double kelvin = TemperatureDifference::of(by() * low, procedure_.unit).kelvin();
    return fmt::format("{} would have had to be {} hotter{}{}", name(), say_kelvin(kelvin), moment(),
                       for_certain());
  }

  [[nodiscard]] std::string say_tempering() const {
    const HoldStage* asked = hold();
    const double low_c = asked != nullptr ? asked->low.celsius() : 0.0;
    const bool least = asked_.limit_is_least();
    const double wanted = *asked_.measured + (least ? by() : -by());
    const double hours =
        std::fabs(equivalent_hours(wanted, low_c) - equivalent_hours(*asked_.measured, low_c));
    return fmt::format("{} would have had to be worth {:.2f} h {} at {}{}", name(), hours,
                       least ? "more" : "less", say_celsius(low_c), for_certain());
  }

  [[nodiscard]] std::string say_hold_time() const {
    const double missing_s = asked_.limit - asked_.measured.value_or(0.0);
    if (missing_s <= kSampleSlack_s)
      return fmt::format("without the excursions allowed the hold time is {} short",
                         say_time(asked_.limit - asked_.without_excursions_s.value_or(0.0)));
    if (!asked_.from_s || !asked_.to_s)
      return fmt::format("the thermocouples would have had to be in the range together for {}",
                         say_time(asked_.limit));
    std::string text = say_clock();
    text += fmt::format("it would have had to run {} longer", say_time(missing_s));
    if (asked_.verdict == Verdict::inconclusive)
      text += asked_.possible_s ? " for certain" : ", and the record does not show whether it did";
    return text + say_excursion_allowed();
  }

  /// Which thermocouple started the clock and which stopped it.
  [[nodiscard]] std::string say_clock() const {
    std::string text = "the clock started at " + say_moment(record_, *asked_.from_s);
    if (asked_.started_by) text += " when " + *asked_.started_by + " came in";
    text += " and stopped at " + say_moment(record_, *asked_.to_s);
    if (asked_.stopped_by) text += " when " + *asked_.stopped_by + " left";
    return text + ": ";
  }

  /// The smallest excursion allowed of those shown with which the hold time is met, and how deep it would
  /// have to be. Nothing where that is deeper than the procedure allows, or than the range is wide.
  [[nodiscard]] std::string say_excursion_allowed() const {
    const HoldStage* asked = hold();
    const bool adds_up = asked != nullptr && asked->count == HoldStage::Count::accumulated;
    for (const HoldAlternative& alternative : asked_.alternatives.holds) {
      if (alternative.excursion_allowed_s <= procedure_.evaluation.excursion_allowed.time_s ||
          alternative.verdict != Verdict::met || alternative.deepest_k > deepest_offered(asked))
        continue;
      return fmt::format("; with an excursion of {} and {} allowed it would be {}",
                         say_time(alternative.excursion_allowed_s), say_kelvin(alternative.deepest_k),
                         say_time(adds_up ? alternative.accumulated_s : alternative.continuous_s));
    }
    return {};
  }

  [[nodiscard]] double deepest_offered(const HoldStage* asked) const {
    if (procedure_.evaluation.excursion_allowed.depth)
      return procedure_.evaluation.excursion_allowed.depth->kelvin() + kTemperatureSlack;
    return asked != nullptr && asked->high ? asked->high->celsius() - asked->low.celsius() : 0.0;
  }

  const Record& record_;
  const Procedure& procedure_;
  const Requirement& asked_;
};

}  // namespace

std::string shortfall(const Record& record, const Procedure& procedure, const Requirement& requirement) {
  return Need(record, procedure, requirement).say();
}

}  // namespace soakwright
