// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace CLI {
class App;
}
namespace analysis {
class OutputFile;
}

namespace cli {

/// The options that say where answers go, which every command shares.
class OutputOptions {
public:
    /// Beside --json, --csv and --quiet, which every command has.
    struct Kinds {
        bool chart = false;
        bool wav_file = false;    ///< --wav FILE
        bool wav_folder = false;  ///< --wav DIR
        bool waveform = false;
        bool tone_chart = false;
        bool tone_csv = false;
        bool musicxml = false;
        bool page = false;
    };
    OutputOptions(CLI::App& parser, const Kinds& kinds);

    /// Makes sure, before anything is computed, that every asked file has a right name and can be written.
    /// `more`: files that the command itself will write, which must be others.
    void check(const std::vector<std::string>& more = {}) const;

    bool wants_chart() const { return chart_.has_value(); }
    bool wants_tone_chart() const { return tone_chart_.has_value(); }
    bool wants_tone_csv() const { return tone_csv_.has_value(); }
    bool wants_wav() const { return wav_.has_value(); }
    bool wants_musicxml() const { return musicxml_.has_value(); }
    bool wants_waveform() const { return waveform_.has_value(); }
    bool wants_page() const { return page_.has_value(); }
    bool quiet() const { return quiet_; }

    /// What a command has to say, each made only if it was asked for.
    struct Answers {
        std::function<std::string()> json;
        std::function<std::string()> csv;
        std::function<std::string()> table;
        std::function<std::string()> words;  ///< plain sentences after the table; may be empty
        std::function<std::string()> waveform;
        std::function<void(const analysis::OutputFile& file)> chart;  ///< draws into that file
        std::function<void(const analysis::OutputFile& file)> tone_chart;
        std::function<std::string()> tone_csv;
        std::function<std::string()> musicxml;
        std::function<std::string()> page = {};
        struct Sound {
            std::string name;  ///< file in --wav DIR
            std::function<void(const analysis::OutputFile& file)> fill;
        };
        std::vector<Sound> sounds;
    };
    /// Writes every asked file, whole or none; then to stdout what was asked for there, else table and words.
    void write(const Answers& answers) const;

private:
    std::filesystem::path sound_place(const std::string& name) const;

    Kinds kinds_;
    bool quiet_ = false;
    std::optional<std::string> json_;
    std::optional<std::string> csv_;
    std::optional<std::string> chart_;
    std::optional<std::string> wav_;
    std::optional<std::string> waveform_;
    std::optional<std::string> tone_chart_;
    std::optional<std::string> tone_csv_;
    std::optional<std::string> musicxml_;
    std::optional<std::string> page_;
};

/// Printed wherever a sound was written.
inline constexpr const char* listening_caution = "Listening: start low; loud playback harms hearing.";

/// Writes to standard output; OutputError if it takes no more.
void print(const std::string& text);

}  // namespace cli
