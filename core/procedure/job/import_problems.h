// SPDX-License-Identifier: GPL-3.0-or-later
// What is said about import settings given beside the job.
#pragma once

#include "core/problems/problem.h"

namespace soakwright {

Problem unlisted_without_job();

}  // namespace soakwright
