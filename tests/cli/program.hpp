// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/analysis/temporary_folder.hpp"

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace tests {

/// What a run of the program left behind.
struct Outcome {
    int exit_code = -1;
    std::string out;
    std::string err;
};

/// The program in an empty folder of its own, which tests may look into.
class Bowband {
public:
    Outcome run(const std::vector<std::string>& arguments) const;
    /// As above, from one line with single spaces between.
    Outcome run_line(const std::string& line) const;
    /// Runs a command that must work in silence but for stdout, which must be JSON.
    nlohmann::json json(const std::string& line) const;

    std::filesystem::path file(const std::string& name) const { return folder_ / name; }
    /// Files made so far.
    std::size_t file_count() const { return folder_.file_count(); }

private:
    TemporaryFolder folder_;
    TemporaryFolder said_;
};

std::vector<std::string> words_of(const std::string& line);

/// Those of the keys that the object lacks.
std::vector<std::string> missing_keys(const nlohmann::json& object, const std::vector<std::string>& keys);

}  // namespace tests
