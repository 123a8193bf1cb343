// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/options_output.hpp"

#include "analysis/audio_file.hpp"
#include "analysis/checked_write.hpp"
#include "analysis/errors.hpp"
#include "cli/chart_calls.hpp"

#include <CLI/CLI.hpp>

#include <cstdio>

namespace cli {
namespace {

namespace fs = std::filesystem;

bool is_stdout(const std::optional<std::string>& place) { return place == "-"; }

/// A folder that goes again unless it is kept, if it was made here.
class MadeFolder {
public:
    explicit MadeFolder(fs::path place) : place_(std::move(place)) {
        std::error_code error;
        if (fs::is_directory(place_, error)) return;
        if (fs::exists(place_, error))
            throw analysis::OutputError(place_.string(), "is a file; --wav needs a folder here");
        made_ = fs::create_directory(place_, error);
        if (!made_) throw analysis::OutputError(place_.string(), "this folder can't be made: " + error.message());
    }
    ~MadeFolder() {
        std::error_code error;
        if (made_) fs::remove(place_, error);  // only if still empty
    }
    MadeFolder(const MadeFolder&) = delete;
    MadeFolder& operator=(const MadeFolder&) = delete;

private:
    fs::path place_;
    bool made_ = false;
};

/// A folder's own name, without a slash at its end.
fs::path folder_of(const std::string& given) {
    const fs::path place(given);
    return place.has_filename() ? place : place.parent_path();
}

void require_csv_ending(const std::string& place) {
    if (fs::path(place).extension() != ".csv")
        throw analysis::InputError("--waveform " + place, "the file's name must end in .csv");
}

void require_musicxml_ending(const std::string& place) {
    const fs::path ending = fs::path(place).extension();
    if (ending != ".musicxml" && ending != ".xml")
        throw analysis::InputError("--musicxml " + place, "the file's name must end in .musicxml or .xml");
}

void require_page_ending(const std::string& place) {
    if (fs::path(place).extension() != ".html")
        throw analysis::InputError("--page " + place, "the file's name must end in .html");
}

void refuse_twins(const std::vector<std::string>& places) {
    for (std::size_t i = 0; i < places.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (fs::path(places[i]).lexically_normal() == fs::path(places[j]).lexically_normal())
                throw analysis::InputError(places[i],
                                           "is asked for twice; give every output a file of its own" +
                                               std::string(places[i] == "-" ? " (only one can go to -)" : ""));
}

}  // namespace

void print(const std::string& text) {
    const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
    if (!written || std::fflush(stdout) != 0) throw analysis::OutputError("standard output", "can't be written");
}

OutputOptions::OutputOptions(CLI::App& parser, const Kinds& kinds) : kinds_(kinds) {
    const char* group = "Output (files appear whole or not at all)";
    parser.add_option("--json", json_, "JSON to FILE, or - for standard output")->type_name("FILE|-")->group(group);
    parser.add_option("--csv", csv_, "CSV to FILE, or - for standard output")->type_name("FILE|-")->group(group);
    if (kinds.chart) {
        parser.add_option("--chart", chart_, "Chart to FILE.png, .svg or .pdf")->type_name("FILE")->group(group);
    }
    if (kinds.tone_chart) {
        parser
            .add_option("--tone-chart", tone_chart_,
                        "Chart of pitch, brightness, level and clarity to FILE.png, .svg or .pdf")
            ->type_name("FILE")
            ->group(group);
    }
    if (kinds.tone_csv) {
        parser.add_option("--tone-csv", tone_csv_, "The tone of every stroke of the map to FILE, or -")
            ->type_name("FILE|-")
            ->group(group);
    }
    if (kinds.wav_file) parser.add_option("--wav", wav_, "Sound to FILE.wav or .flac")->type_name("FILE")->group(group);
    if (kinds.wav_folder) {
        parser.add_option("--wav", wav_, "Two sounds into DIR, bow left behind and bow follows")
            ->type_name("DIR")
            ->group(group);
    }
    if (kinds.waveform) {
        parser.add_option("--waveform", waveform_, "Forces, velocity and temperature over time to FILE.csv")
            ->type_name("FILE")
            ->group(group);
    }
    if (kinds.musicxml) {
        parser.add_option("--musicxml", musicxml_, "The tune with fingers and strings to FILE.musicxml or .xml")
            ->type_name("FILE")
            ->group(group);
    }
    if (kinds.page) {
        parser.add_option("--page", page_, "The page to FILE.html: one file, sounds and charts in it")
            ->type_name("FILE")
            ->group(group);
    }
    parser
        .add_flag("--quiet", quiet_,
                  "No table, no progress (the table is printed unless this is given or an output is -)")
        ->group(group);
}

void OutputOptions::check(const std::vector<std::string>& more) const {
    if (wav_ && kinds_.wav_file) analysis::require_audio_ending(*wav_);
    if (waveform_) require_csv_ending(*waveform_);
    if (musicxml_) require_musicxml_ending(*musicxml_);
    if (page_) require_page_ending(*page_);
    std::vector<std::string> places = more;
    for (const auto& place : {json_, csv_, chart_, wav_, waveform_, tone_chart_, tone_csv_, musicxml_, page_}) {
        if (place) places.push_back(*place);
    }
    refuse_twins(places);
    if (chart_) require_chart_place("--chart", *chart_);
    if (tone_chart_) require_chart_place("--tone-chart", *tone_chart_);
    for (const auto& place : {json_, csv_, chart_, waveform_, tone_chart_, tone_csv_, musicxml_, page_,
                              kinds_.wav_file ? wav_ : std::nullopt})
        if (place && !is_stdout(place)) analysis::OutputFile probe(*place);
    if (wav_ && kinds_.wav_folder) {
        const MadeFolder folder(folder_of(*wav_));
        const analysis::OutputFile probe(folder_of(*wav_) / "sound.wav");
    }
}

fs::path OutputOptions::sound_place(const std::string& name) const {
    return kinds_.wav_folder ? folder_of(*wav_) / name : fs::path(*wav_);
}

void OutputOptions::write(const Answers& answers) const {
    std::optional<MadeFolder> folder;
    if (wav_ && kinds_.wav_folder) folder.emplace(folder_of(*wav_));
    std::vector<analysis::OutputFile> files;
    std::string to_stdout;
    const auto put = [&](const std::optional<std::string>& place, const std::function<std::string()>& text) {
        if (!place) return;
        if (is_stdout(place)) {
            to_stdout += text();
            return;
        }
        analysis::write_bytes(files.emplace_back(*place), text());
    };
    put(json_, answers.json);
    put(csv_, answers.csv);
    put(waveform_, answers.waveform);
    put(tone_csv_, answers.tone_csv);
    put(musicxml_, answers.musicxml);
    put(page_, answers.page);
    if (chart_) answers.chart(files.emplace_back(*chart_));
    if (tone_chart_) answers.tone_chart(files.emplace_back(*tone_chart_));
    if (wav_) {
        for (const Answers::Sound& sound : answers.sounds) sound.fill(files.emplace_back(sound_place(sound.name)));
    }
    const bool for_people = !quiet_ && !is_stdout(json_) && !is_stdout(csv_) && !is_stdout(tone_csv_);
    if (for_people) {
        const std::string words = answers.words ? answers.words() : "";
        to_stdout = answers.table() + (words.empty() ? "" : "\n" + words + "\n");
    }
    for (analysis::OutputFile& file : files) file.commit();
    print(to_stdout);
}

}  // namespace cli
