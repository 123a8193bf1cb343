// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/stroke_map.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sim {

/// Why a stroke is no good; `none` = it speaks and keeps its tone.
enum class Fault {
    none,
    slow_to_speak,
    never_slips,
    force_too_small,
    force_too_great,
    wrong_motion,
    tone_weak,
    tone_dull,
    flat,
    sharp,
    under_floor,
    past_finger
};
inline constexpr std::size_t fault_count = 12;
/// In a player's words, as in tables and JSON: "slow to speak".
std::string_view fault_name(Fault fault);
/// Good, or failing only by its tone.
bool is_speaking(Fault fault);

/// How a place does: shares over the player's forces (even in ratio) and places (even over +- wander).
struct Security {
    double contact_point = 0.0;                ///< m
    double security = 0.0;                     ///< speaks and keeps its tone
    double speaks_share = 0.0;                 ///< speaks
    double tone_share = 0.0;                   ///< keeps its tone, of those that speak
    std::array<double, fault_count> faults{};  ///< share of each fault; the first is the security itself
    Fault fails_by = Fault::none;              ///< the commonest fault

    bool operator==(const Security&) const = default;
};

/// Everything else that follows from the shares of faults at a place.
Security security_of(double contact_point, const std::array<double, fault_count>& faults);

/// The best that a note gives at each force, over the contact points that are sure to speak.
struct ToneReference {
    double level = 0.0;       ///< N RMS; 0 = nothing speaks at this force there
    double brightness = 0.0;  ///< centroid in multiples of f0
};

/// A map with every stroke's fault found.
///
/// A stroke keeps its tone if its pitch lies within the tolerance of the note, its level within tone_level of the
/// best that this note gives at the same force over the contact points whose (wander-averaged) share of speaking
/// strokes reaches band_share, and its brightness is at least tone_brightness_ratio of the best there.  Where no
/// contact point reaches that share, those with the greatest share serve.
class Assessment {
public:
    /// Uses the map's strokes under `player`'s limits, which may differ from those the map was played for in tone
    /// limits, pitch tolerance, wander and band share (not in speed, rise or forces).
    Assessment(const StrokeMap& map, const Player& player);
    /// As above, held against another map's best: one reference a force of this map.
    Assessment(const StrokeMap& map, const Player& player, const std::vector<ToneReference>& references);

    Fault fault(std::size_t contact, std::size_t force) const { return faults_[contact * force_count_ + force]; }
    /// Any place, m; also one under the floor or past the finger, whose strokes count as failed.
    Security at(double contact_point) const;
    const std::vector<ToneReference>& references() const { return references_; }

private:
    Fault speaking_fault(const StrokeResult& result) const;
    Fault tone_fault(const StrokeResult& result, const ToneReference& reference) const;
    Security averaged(double contact_point, const std::vector<std::array<double, fault_count>>& columns) const;
    std::vector<std::array<double, fault_count>> columns() const;
    void find_speaking();
    void find_references();
    void find_tone();

    const StrokeMap* map_;
    Player player_;
    std::size_t force_count_;
    std::vector<Fault> faults_;
    std::vector<ToneReference> references_;                // one a force
    std::vector<std::array<double, fault_count>> shares_;  // one a contact point, over the player's forces
};

/// A stretch of contact points whose security reaches band_share.
struct Band {
    double near = 0.0;               ///< m
    double far = 0.0;                ///< m
    Fault near_bound = Fault::none;  ///< what fails beyond
    Fault far_bound = Fault::none;

    bool operator==(const Band&) const = default;
};

/// The note's answer.
struct BandResult {
    std::optional<double> best;  ///< m; nothing speaks anywhere: none
    Security at_best;
    std::optional<Band> band;  ///< the one that holds the best contact point
    std::vector<Band> other_bands;
    std::optional<Band> stretch;  ///< round the best contact point, where security reaches band_share of the best's:
                                  ///< where to bow even when nothing is secure enough to be called a band
    std::string reason;           ///< why there is no band; empty where there is one
};

/// Best contact point: middle (in ratio) of the connected set within 1/24 of the greatest security; and the bands.
BandResult find_band(const Assessment& assessment, const StrokeMap& map, const Player& player);
/// The same where the map itself is not wanted: plays it first.
BandResult find_band(const Note& note, const Player& player, const MapGrid& grid, const Workers& workers);

}  // namespace sim
