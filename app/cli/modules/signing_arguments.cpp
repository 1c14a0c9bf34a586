// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/modules/signing_arguments.h"

#include <CLI/CLI.hpp>

#include "core/procedure/job/job_words.h"

namespace soakwright::cli {

void add_sign_options(CLI::App& command, SigningArguments& arguments) {
  SignOrder& order = arguments.sign;
  command.add_option("REPORT", order.report, "the report, as `check --report` wrote it")
      ->type_name("")
      ->required();
  command.add_option("--key", order.key, "the signer's key: PEM, or PKCS#12 with its certificate")
      ->type_name("FILE")
      ->required();
  command
      .add_option("--certificate", order.certificate,
                  "the signer's certificate; else the one in the key's file")
      ->type_name("FILE");
  command.add_option("--name", order.name, "the signer's name")->type_name("NAME")->required();
  command.add_option("--role", arguments.role, "as what the signer signs")
      ->type_name("performed|reviewed|witnessed")
      ->required();
  command.add_option("--password-file", order.password_file, "a file whose first line opens the key")
      ->type_name("FILE");
  command.add_option("--out", order.out, "write the signed report here; else in place of the report")
      ->type_name("FILE");
}

void add_verify_options(CLI::App& command, SigningArguments& arguments) {
  command.add_option("REPORT", arguments.verify.report, "the report")->type_name("")->required();
  command.add_option("--trust", arguments.verify.trust, "certificates (PEM) that vouch for the signers'")
      ->type_name("FILE");
  command
      .add_option("--timestamp", arguments.verify.timestamp,
                  "a time stamp of the report (RFC 3161): the authority's reply or its token")
      ->type_name("FILE");
}

std::optional<std::string> settle_sign(SigningArguments& arguments) {
  const auto role = kPersonRoleWords.named(arguments.role);
  if (!role) return "--role is performed, reviewed or witnessed, not '" + arguments.role + "'";
  arguments.sign.role = *role;
  return std::nullopt;
}

}  // namespace soakwright::cli
