// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/batch_problems.h"

namespace soakwright {
namespace {

Problem note(const std::string& path, std::string what, std::string help) {
  return {ProblemKind::bad_input, path, 0, std::move(what), std::move(help)};
}

}  // namespace

Problem no_such_folder(const std::string& path, const std::string& why) {
  return {ProblemKind::cannot_open, path, 0, "there is no such folder" + (why.empty() ? why : ": " + why),
          "check the path and the spelling"};
}

Problem not_a_folder(const std::string& path) {
  return {ProblemKind::cannot_open, path, 0, "this is a file, not a folder",
          "name its folder, or evaluate the file with `soakwright check`"};
}

Problem no_log_found(const std::string& path) {
  return {
      ProblemKind::bad_input, path, 0, "there is no log here",
      "logs end in .csv, .txt, .tsv, .tab, .log, .dat, .asc or .prn, or are named by a job in the folder"};
}

Problem output_is_an_input(const std::string& path) {
  return {ProblemKind::usage, path, 0, "this is a file to be read, and would be written over",
          "name another file"};
}

Problem one_file_for_two_outputs(const std::string& path) {
  return {ProblemKind::usage, path, 0, "named for both --json and --csv", "give each a file of its own"};
}

Problem resume_without_file() {
  return {ProblemKind::usage, "", 0,
          "--resume has nothing to go on from: the journal is kept beside the results",
          "name a file with --json or --csv, or a folder with --reports"};
}

Problem folder_cannot_be_read(const std::string& path, const std::string& why) {
  return {ProblemKind::cannot_open, path, 0, "the folder cannot be read: " + why,
          "check its permissions; logs in it are not evaluated"};
}

Problem link_leads_nowhere(const std::string& path) {
  return {ProblemKind::cannot_open, path, 0, "this link leads nowhere",
          "remove it, or bring back what it led to; if that is a folder, logs in it are not evaluated"};
}

Problem job_without_log(const std::string& job) {
  return {ProblemKind::bad_input, job, 0, "this job names no log, and no log of its name is beside it",
          "add `log = \"…\"` to the job, or bring back the log"};
}

Problem job_names_another_log(const std::string& job, std::size_t line, const std::string& other) {
  return {ProblemKind::bad_input, job, line,
          "this job has the name of the log beside it, but names another one: " + other,
          "correct `log`, or give the job another name"};
}

std::string unnamed_journal() { return "the journal in the folder of temporary files"; }

Problem folder_read_already(const std::string& path) {
  return note(path, "this folder is named twice, or is in another one that is named",
              "its logs are evaluated once");
}

Problem link_to_folder_read_already(const std::string& path) {
  return note(path, "this link leads to a folder that is read already", "its logs are evaluated once");
}

Problem other_endings_left_out(const std::map<std::string, std::size_t>& endings) {
  std::size_t count = 0;
  std::string list;
  for (const auto& [ending, files] : endings) {
    count += files;
    if (!list.empty()) list += ", ";
    list += (ending.empty() ? "without an ending" : ending) + ": " + std::to_string(files);
  }
  return note("",
              std::to_string(count) + (count == 1 ? " file is" : " files are") +
                  " no log by the ending of the name (" + list + ")",
              "export a log as text for it to be evaluated");
}

Problem own_output_left_out(const std::string& path) {
  return note(path, "this is a result of a batch and not a log", "it is not evaluated");
}

Problem part_of_another_record(const std::string& log, const std::string& job) {
  return note(log, "this is the previous record of the job " + job,
              "it is evaluated there and not by itself");
}

Problem beside_is_no_job(const std::string& path) {
  return note(path, "this file has the name of a log but is no job", "it is not used");
}

Problem journal_of_other_batch(const std::string& path) {
  return note(path, "this journal is of a batch with other options or of another version of the program",
              "all logs are evaluated from the beginning");
}

Problem journal_dropped(const std::string& path) {
  return note(path, "an interrupted batch is started from the beginning",
              "use --resume to go on where it was");
}

Problem journal_damaged(const std::string& path) {
  return note(path, "the end of the journal is damaged", "logs from there on are evaluated again");
}

Problem part_is_empty() { return note("", "this part of the batch has no logs", "other parts have them"); }

}  // namespace soakwright
