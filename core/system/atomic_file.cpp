// SPDX-License-Identifier: GPL-3.0-or-later
// 1. what stands at the path: a folder, a device, a link, a file or nothing
// 2. a part file beside the target, under a name that no other run takes
// 3. all bytes into it, onto the disk
// 4. its name becomes the target's, and the folder's change reaches the disk
#include "core/system/atomic_file.h"

#include <atomic>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <mutex>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/system/file_descriptor.h"
#include "core/system/write_problems.h"

namespace soakwright {
namespace {

namespace fs = std::filesystem;

/// Links under these folders stand for open files of a process, and their targets are no paths.
bool is_open_file_link(const fs::path& path) {
  const std::string folder = path.parent_path().string();
  return folder.starts_with("/proc/") || folder == "/dev/fd";
}

struct FilePlace {
  fs::path path;
  bool open_file = false;  ///< an open file of this process, such as /dev/stdout
};

/// Where `path` leads over symbolic links, also to a file that is not there yet.
std::optional<FilePlace> followed(fs::path path) {
  constexpr int kLinksAtMost = 40;
  std::error_code error;
  for (int links = 0; links < kLinksAtMost; ++links) {
    if (!fs::is_symlink(fs::symlink_status(path, error))) return FilePlace{path};
    if (is_open_file_link(path)) return FilePlace{path, true};
    const fs::path target = fs::read_symlink(path, error);
    if (error) return std::nullopt;
    path = path.parent_path() / target;
  }
  return std::nullopt;
}

/// The part file of the write that is going on, for remove_part_file_at_signal(). One write at a time.
std::mutex writing;
char part_path[4096];
std::atomic<bool> part_noted{false};

void note_part(const fs::path& part) {
  part_noted = false;
  if (part.native().size() >= sizeof part_path) return;
  std::memcpy(part_path, part.c_str(), part.native().size() + 1);
  part_noted = true;
}

/// Opens a part file that was not there before, in the folder of `target`. Its name does not depend on the
/// target's, which may be as long as names can be.
int open_part(const fs::path& target, mode_t mode, fs::path& part) {
  static std::atomic<unsigned> number{0};
  constexpr int kNamesAtMost = 100'000;
  for (int i = 0; i < kNamesAtMost; ++i) {
    part = target.parent_path() /
           (".soakwright-" + std::to_string(::getpid()) + "-" + std::to_string(number++) + ".part");
    note_part(part);  // before it is there, so that no signal comes in between
    const int descriptor = ::open(part.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    if (descriptor >= 0) return descriptor;
    part_noted = false;
    if (errno != EEXIST) return descriptor;
  }
  return -1;
}

std::optional<Problem> write_directly(const std::string& path, std::string_view bytes) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
  if (!file.open()) return cannot_write(path, errno);
  if (const int error = write_all(file.number(), bytes); error != 0) return cannot_write(path, error);
  if (!file.close()) return cannot_write(path, errno);
  return std::nullopt;
}

/// The new name of the file must outlive a loss of power too; where a folder cannot be synced, nothing is
/// lost but that.
void sync_folder(const fs::path& folder) {
  const Descriptor descriptor(
      ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (descriptor.open()) static_cast<void>(sync_to_disk(descriptor.number()));
}

/// Steps 3 and 4, and removes the part file where they fail: 0, or the error.
int fill_and_rename(Descriptor& file, const fs::path& part, const fs::path& target, const struct stat* before,
                    std::string_view bytes) {
  int error = write_all(file.number(), bytes);
  if (error == 0 && before != nullptr) {
    // Owner and group where this user may give them away; the permissions in any case.
    static_cast<void>(::fchown(file.number(), before->st_uid, before->st_gid) == 0);
    if (::fchmod(file.number(), before->st_mode & 07777U) != 0) error = errno;
  }
  if (error == 0) error = sync_to_disk(file.number());
  if (!file.close() && error == 0) error = errno;
  if (error == 0 && ::rename(part.c_str(), target.c_str()) != 0) error = errno;
  if (error != 0) ::unlink(part.c_str());
  return error;
}

}  // namespace

std::optional<Problem> write_file_whole(const std::string& path, std::string_view bytes) {
  const auto place = followed(path);
  if (!place) return links_lead_nowhere(path);
  struct stat status {};
  const bool exists = ::stat(place->path.c_str(), &status) == 0;
  if (exists && S_ISDIR(status.st_mode)) return is_a_folder(path);
  if (exists && (place->open_file || !S_ISREG(status.st_mode))) return write_directly(path, bytes);
  // A file that may not be written to is not replaced either, although its folder would allow it.
  if (exists && ::access(place->path.c_str(), W_OK) != 0) return cannot_write(path, errno);

  const std::lock_guard<std::mutex> lock{writing};
  fs::path part;
  constexpr mode_t kOwnerOnly = 0600;
  constexpr mode_t kAsTheUmaskSays = 0666;
  Descriptor file(open_part(place->path, exists ? kOwnerOnly : kAsTheUmaskSays, part));
  if (!file.open()) return cannot_write(path, errno);
  const int error = fill_and_rename(file, part, place->path, exists ? &status : nullptr, bytes);
  part_noted = false;
  if (error != 0) return cannot_write(path, error);
  sync_folder(place->path.parent_path());
  return std::nullopt;
}

std::string written_place(const std::string& path) {
  const auto place = followed(path);
  if (!place) return {};
  std::error_code error;
  const fs::path absolute = fs::absolute(place->path, error);
  const fs::path folder = fs::canonical(absolute.parent_path(), error);
  return (error ? absolute.lexically_normal() : folder / absolute.filename()).string();
}

void remove_part_file_at_signal() noexcept {
  if (part_noted) ::unlink(part_path);
}

}  // namespace soakwright
