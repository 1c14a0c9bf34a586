// The rules of rooms.txt, and what they say of one #include.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "tests/house/source_tree.h"

class RoomRules {
 public:
  /// `rooms` are the lines of rooms.txt, `values` those of core/values.txt.
  RoomRules(const std::vector<std::string>& rooms, const std::vector<std::string>& values);

  /// Why `file` (from the top of the tree) may not have this line; nothing where it may.
  [[nodiscard]] std::optional<std::string> objection(const std::string& file,
                                                     const IncludeLine& include) const;
  /// The room that a file stands in: "core/record", "core" for the doors, "" outside every room.
  [[nodiscard]] std::string room_of(std::string_view file) const;

 private:
  [[nodiscard]] bool is_value(const std::string& header) const;

  std::map<std::string, std::set<std::string>> allowed_;
  std::vector<std::string> values_;
};
