// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gtest/gtest.h>

#include <sys/wait.h>
#include <sstream>

namespace tests {
namespace {

std::string quoted(const std::string& text) {
    std::string result = "'";
    for (const char c : text) result += c == '\'' ? "'\\''" : std::string(1, c);
    return result + "'";
}

}  // namespace

std::vector<std::string> words_of(const std::string& line) {
    std::istringstream in(line);
    std::vector<std::string> words;
    for (std::string word; in >> word;) words.push_back(word);
    return words;
}

Outcome Bowband::run(const std::vector<std::string>& arguments) const {
    std::string command = "cd " + quoted(folder_.path().string()) + " && " + quoted(BOWBAND_PROGRAM);
    for (const std::string& argument : arguments) command += " " + quoted(argument);
    command += " >" + quoted((said_ / "out").string()) + " 2>" + quoted((said_ / "err").string()) + " </dev/null";
    const int status = std::system(command.c_str());
    return {.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : -1,
            .out = contents(said_ / "out"),
            .err = contents(said_ / "err")};
}

Outcome Bowband::run_line(const std::string& line) const { return run(words_of(line)); }

nlohmann::json Bowband::json(const std::string& line) const {
    const Outcome outcome = run_line(line);
    EXPECT_EQ(outcome.exit_code, 0) << line << "\n" << outcome.err;
    EXPECT_EQ(outcome.err, "") << line;
    return nlohmann::json::parse(outcome.out, nullptr, false);
}

std::vector<std::string> missing_keys(const nlohmann::json& object, const std::vector<std::string>& keys) {
    std::vector<std::string> missing;
    for (const std::string& key : keys)
        if (!object.contains(key)) missing.push_back(key);
    return missing;
}

}  // namespace tests
