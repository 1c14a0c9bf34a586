// Bytes to a path: all of them, or the file that was there stays as it was.
#pragma once

#include <QByteArray>
#include <optional>
#include <string>

#include "core/problems/problem.h"

namespace soakwright::pdf {

std::optional<Problem> write_whole(const QByteArray& bytes, const std::string& path);

}  // namespace soakwright::pdf
