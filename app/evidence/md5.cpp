// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/md5.h"

#include <nettle/md5.h>

namespace soakwright::evidence {

std::string md5_of(std::string_view bytes) {
  md5_ctx context;
  md5_init(&context);
  md5_update(&context, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
  std::string digest(MD5_DIGEST_SIZE, '\0');
  md5_digest(&context, digest.size(), reinterpret_cast<std::uint8_t*>(digest.data()));
  return digest;
}

}  // namespace soakwright::evidence
