// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/json_values.hpp"
#include "sim/report/run_record.hpp"

namespace sim::report {

/// The "run" object: program, version, command, preset (name, hash and whole), settings.
Json run_part(const RunRecord& run);

/// The same for a command that is asked about a file and not about a preset.
struct FileRun {
    const char* command;
    const std::string& version;
    const std::string& file;
    const std::string& file_hash;
};
Json file_run_part(const FileRun& run, Json settings);

}  // namespace sim::report
