// SPDX-License-Identifier: GPL-3.0-or-later
// A log written for one test, gone when the test ends.
#pragma once

#include <atomic>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

#include <unistd.h>

namespace soakwright {

class WrittenLog {
 public:
  explicit WrittenLog(std::string_view bytes) {
    static std::atomic<unsigned> number{0};
    path_ = std::filesystem::temp_directory_path() /
            ("soakwright-test-" + std::to_string(::getpid()) + "-" + std::to_string(number++) + ".csv");
    std::ofstream{path_, std::ios::binary}.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  }
  ~WrittenLog() {
    std::error_code ignored;
    std::filesystem::remove(path_, ignored);
  }
  WrittenLog(const WrittenLog&) = delete;
  WrittenLog& operator=(const WrittenLog&) = delete;

  [[nodiscard]] std::string path() const { return path_.string(); }

 private:
  std::filesystem::path path_;
};

}  // namespace soakwright
