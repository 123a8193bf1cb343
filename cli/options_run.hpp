// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/batch.hpp"
#include "sim/note.hpp"
#include "sim/report/run_record.hpp"

#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace cli {

/// How the text of an option becomes a setting.
enum class SettingKind {
    number,  ///< 0.2
    span,    ///< 20 or 20:60
    word,    ///< taken as it stands
    list,    ///< 0.1,0.4: kept as its text
    stop,    ///< 5, 5.5, D5, two of them as a range 5:19, or several 0,12,19
    flag     ///< given or not: "yes" where it was
};

/// An option that is a setting of the run.
struct SettingOption {
    const char* option;  ///< "--wander-mm"
    const char* key;     ///< in the run record: "wander_mm"
    SettingKind kind;
    const char* placeholder;  ///< "MM"
    const char* help;
};

// Options of some commands only.
inline constexpr SettingOption contact_option{"--contact-mm", "contact_mm", SettingKind::span, "X|A:B",
                                              "Contact point, mm from the bridge, or from A to B"};
inline constexpr SettingOption seconds_option{"--seconds", "seconds", SettingKind::number, "S",
                                              "How long a stroke lasts"};
inline constexpr SettingOption contact_points_option{"--contact-points", "contact_points", SettingKind::number, "N",
                                                     "Contact points tried, bridge to 0.45 of the string"};
inline constexpr SettingOption forces_option{"--forces", "forces", SettingKind::number, "N",
                                             "Bow forces tried over the player's range"};
inline constexpr SettingOption held_points_option{"--held-points", "held_points", SettingKind::number, "N",
                                                  "Contact points at which the forces that hold are found too"};

/// What was asked, with the preset and string in force.
struct Question {
    sim::report::RunRecord run;  ///< the settings given; defaults are added as they come into force
    sim::Preset preset;
    sim::PresetString string;
    bool string_named = false;  ///< by --string, or by the record that is repeated; else it is the first
    bool every_string = false;  ///< none was named, and the command asks for one_or_every_string
    std::optional<sim::StopEnd> stop_end;
    sim::Workers workers;  ///< threads and kernel asked for; nobody told

    /// The setting if it was given, else `usual`, which then is in force.  InputError outside low … high.
    struct Allowed {
        double low;
        double high;
        const char* unit;
    };
    double number(const SettingOption& option, double usual, const Allowed& allowed);
    int whole(const SettingOption& option, int usual, const Allowed& allowed);
    /// Numbers of a list, as they stand; InputError outside low … high, for fewer than two, and unless they rise.
    std::vector<double> numbers(const SettingOption& option, const std::vector<double>& usual, const Allowed& allowed);
    /// The setting if it was given as a number or two.
    std::optional<sim::report::Span> span(const std::string& key) const;
    /// Notes a value that came into force without being given.
    void note_usual(const std::string& key, const sim::report::SettingValue& value) {
        run.settings.try_emplace(key, value);
    }
    /// The one stop asked for, the open string if none was; InputError for a range.
    double one_stop();
    /// The stops listed one by one, rising, the open string if none was; InputError for a range.
    std::vector<double> some_stops();
    /// All stops asked for, a semitone apart; the whole board if none was.
    std::vector<double> stops();
    /// The stops asked for, in any form, else those of `usual` that lie on the board.
    std::vector<double> stops_or(const std::vector<double>& usual);
    /// The one contact point asked for, m; InputError for a range.
    std::optional<double> one_contact() const;
};

/// PRESET, --repeat, --threads, and the options that are settings of the run.
class RunOptions {
public:
    /// What the command is about: a note or notes of one string (the first, or every one, where none is named), or all
    /// strings and stops.
    enum class Asks { one_string, one_or_every_string, whole_instrument };
    RunOptions(CLI::App& parser, std::string command, std::initializer_list<SettingOption> more,
               Asks asks = Asks::one_string);

    /// Everything given is read and checked against the preset.
    Question ask() const;

private:
    void add(CLI::App& parser, const SettingOption& option, const char* group);
    sim::report::RunRecord record() const;
    void refuse_beside_repeat() const;
    int thread_count() const;

    std::string command_;
    Asks asks_ = Asks::one_string;
    std::vector<SettingOption> options_;
    std::map<std::string, std::string> given_;  ///< option's key -> text
    std::string preset_;
    std::string repeat_;
    std::string threads_;
};

}  // namespace cli
