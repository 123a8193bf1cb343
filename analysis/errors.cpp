// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/errors.hpp"

namespace analysis {

InputError::InputError(const std::string& where, const std::string& what)
    : std::runtime_error(where + ": " + what), where_(where) {}

OutputError::OutputError(const std::string& where, const std::string& what) : std::runtime_error(where + ": " + what) {}

}  // namespace analysis
