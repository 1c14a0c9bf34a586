// SPDX-License-Identifier: GPL-3.0-or-later
// What is said about the folders and files of a batch. Of notes, `kind` means nothing.
#pragma once

#include <cstddef>
#include <map>
#include <string>

#include "core/problems/problem.h"

namespace soakwright {

// What a batch cannot begin with.
Problem no_such_folder(const std::string& path, const std::string& why);
Problem not_a_folder(const std::string& path);
Problem no_log_found(const std::string& path);
Problem output_is_an_input(const std::string& path);
Problem one_file_for_two_outputs(const std::string& path);
Problem resume_without_file();

// What stands in the results in place of a verdict.
Problem folder_cannot_be_read(const std::string& path, const std::string& why);
Problem link_leads_nowhere(const std::string& path);
Problem job_without_log(const std::string& job);
Problem job_names_another_log(const std::string& job, std::size_t line, const std::string& other);

/// What stands for the path of a journal that has none.
std::string unnamed_journal();

// Notes.
Problem folder_read_already(const std::string& path);
Problem link_to_folder_read_already(const std::string& path);
Problem other_endings_left_out(const std::map<std::string, std::size_t>& endings);
Problem own_output_left_out(const std::string& path);
Problem part_of_another_record(const std::string& log, const std::string& job);
Problem beside_is_no_job(const std::string& path);
Problem journal_of_other_batch(const std::string& path);
Problem journal_dropped(const std::string& path);
Problem journal_damaged(const std::string& path);
Problem part_is_empty();

}  // namespace soakwright
