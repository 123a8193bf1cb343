// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/output_file.hpp"

#include <string_view>

namespace analysis {

/// Writes all bytes to the file's temporary place, or throws OutputError naming its final place.
void write_bytes(const OutputFile& file, std::string_view bytes);

}  // namespace analysis
