// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/recording.hpp"
#include "analysis/sound_blocks.hpp"
#include "sim/match/body_prior.hpp"
#include "sim/match/heard_levels.hpp"
#include "sim/match/period_pair.hpp"
#include "sim/match/string_regions.hpp"
#include "sim/match/stroke_spectra.hpp"
#include "sim/security.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sim::match {

/// What is asked of a recording held against an instrument.
struct MatchPlan {
    KnownPlace known;
    SpectraGrid grid;
    MapGrid band_grid{.contact_points = 40, .player_forces = 12, .more_forces = 0};
    bool periods = true;          ///< make the overlaid periods
    bool bands = true;            ///< find the contact band of each note's likeliest string too
    double region_share = 0.8;    ///< of the likelihood that a region holds, 0.1 … 0.99
    std::size_t most_notes = 40;  ///< the first ones; the others are passed over with a warning
    BodyPrior prior;
};

/// The usual plan for such places and so fine a grid; where strokes are tried coarsely, so is the band.
MatchPlan match_plan(const KnownPlace& known, const SpectraGrid& grid);

/// How the region lies to the contact band.
enum class BandPlace { inside, partly, outside, no_band, unknown };
std::string_view band_place_name(BandPlace place);

/// The answer for one note.
struct NoteMatch {
    std::string abstains;              ///< why nothing is said; empty where something is
    std::vector<StringMatch> strings;  ///< the likeliest first
    Region ratio;                      ///< contact ratio, whichever string: over all of them by their shares
    bool string_told = false;          ///< the likeliest has 0.8 or more of the likelihood
    double misfit = 0.0;               ///< chi² a partial of the likeliest stroke
    std::vector<HeardLevel> heard;
    std::vector<int> numbers;       ///< of the partials compared
    std::vector<double> simulated;  ///< dB re 1 N, the likeliest stroke's bridge force there
    std::vector<double> body;       ///< dB, what body, room and gain seem to add there
    std::vector<double> body_deviation;
    std::optional<PeriodPair> period;  ///< of the likeliest stroke
    std::optional<BandResult> band;    ///< of the likeliest string's note
    BandPlace in_band = BandPlace::unknown;
};

/// A recording's notes, each with its answer.
struct Match {
    analysis::Recording recording;
    std::vector<NoteMatch> notes;  ///< of recording.notes, in order
    std::vector<std::string> warnings;
    Player player;  ///< whose strokes they were held against
};

inline constexpr double listening_share = 0.05;

/// Holds the notes of a sound, played through three times, against an instrument's simulated strokes.
///
/// A note abstains where it has no steady pitch on the instrument, is too short, rough, foreign or noisy, where no
/// stroke fits (misfit_limit), and where its region is nearly all that was thought possible.  No progress is told of
/// the listening, the first listening_share of the work.
/// threads  results don't depend on them
Match match_recording(const analysis::SoundBlocks& sound, const Preset& preset, const MatchPlan& plan,
                      const Workers& workers);

}  // namespace sim::match
