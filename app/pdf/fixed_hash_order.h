// SPDX-License-Identifier: GPL-3.0-or-later
// Qt writes fonts in the order of a hash table, which is another in each process unless its seed is fixed:
// here, for as long as one of these lives.
#pragma once

#include <QHashFunctions>

namespace soakwright::pdf {

class FixedHashOrder {
 public:
  FixedHashOrder() { QHashSeed::setDeterministicGlobalSeed(); }
  ~FixedHashOrder() { QHashSeed::resetRandomGlobalSeed(); }
  FixedHashOrder(const FixedHashOrder&) = delete;
  FixedHashOrder& operator=(const FixedHashOrder&) = delete;
};

}  // namespace soakwright::pdf
