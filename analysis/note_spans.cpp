// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/note_spans.hpp"

#include "analysis/statistics.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace analysis {
namespace {

constexpr double most_range_db = 45.0;
constexpr double over_floor_db = 8.0;
constexpr double least_range_db = 6.0;
constexpr double shortest_silence = 0.1;  // s
constexpr double shortest_sound = 0.06;   // s
constexpr double shortest_gap = 0.03;     // s
constexpr double heard_clarity = 3.0;     // dB, from which a pitch counts
constexpr double new_pitch = 70.0;        // cents
constexpr double pitch_held = 0.06;       // s
constexpr double leap_held = 0.15;        // s, where it may be a mistaken octave
constexpr double reference_time = 0.3;    // s, of the note so far
constexpr double dip_db = 12.0;
constexpr double unpitched_dip_db = 5.0;
constexpr double slowest_vibrato = 0.26;  // s between its dips
constexpr double vibrato_evenness = 1.5;
constexpr double dip_reach = 0.4;  // s
constexpr double steady_db = 8.0;
constexpr double steady_cents = 60.0;
constexpr double silent_level = 1e-5;  // of full scale: -100 dB

struct Range {
    std::size_t from = 0;
    std::size_t to = 0;  // one past the last
};

std::size_t points_in(double seconds) { return static_cast<std::size_t>(std::lround(seconds / track_step)); }
bool has_pitch(const TrackPoint& point) { return point.hz > 0.0 && point.clarity_db >= heard_clarity; }
double level_db(const TrackPoint& point) { return db_from_ratio(std::max(point.level, silent_level)); }

/// Stretches above the least level.
std::vector<Range> sounding(std::span<const TrackPoint> points, double least) {
    std::vector<Range> ranges;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (points[i].level < least) continue;
        if (!ranges.empty() && i - ranges.back().to < points_in(shortest_gap))
            ranges.back().to = i + 1;
        else
            ranges.push_back({i, i + 1});
    }
    std::erase_if(ranges, [](const Range& range) { return range.to - range.from < points_in(shortest_sound); });
    return ranges;
}

/// Cents above 1 Hz, over five points so that single mistakes go; none where under half of them have a pitch.
std::vector<double> smooth_cents(std::span<const TrackPoint> points) {
    std::vector<double> cents(points.size(), -1.0);
    for (std::size_t i = 0; i < points.size(); ++i) {
        std::vector<double> near;
        for (std::size_t j = i < 2 ? 0 : i - 2; j < std::min(points.size(), i + 3); ++j)
            if (has_pitch(points[j])) near.push_back(cents_between(points[j].hz, 1.0));
        if (near.size() >= 3) cents[i] = quantile(near, 0.5);
    }
    return cents;
}

bool may_be_mistaken(double leap) {
    constexpr std::array<double, 4> ratios{1200.0, 1902.0, 2400.0, 2786.0};
    return std::ranges::any_of(ratios, [&](double ratio) { return std::abs(std::abs(leap) - ratio) < 50.0; });
}

/// Where the pitch changes for good.
std::vector<std::size_t> pitch_changes(const std::vector<double>& cents, const Range& range) {
    std::vector<std::size_t> changes;
    std::vector<double> note;  // pitches of the note so far
    std::size_t away_from = 0;
    std::vector<double> away;
    for (std::size_t i = range.from; i < range.to; ++i) {
        if (cents[i] < 0.0) continue;
        const std::size_t kept = std::min(note.size(), points_in(reference_time));
        const double here =
            note.empty() ? cents[i] : quantile({note.end() - static_cast<std::ptrdiff_t>(kept), note.end()}, 0.5);
        if (std::abs(cents[i] - here) < new_pitch) {
            note.push_back(cents[i]);
            away.clear();
            continue;
        }
        if (!away.empty() && std::abs(cents[i] - quantile(away, 0.5)) > new_pitch) away.clear();
        if (away.empty()) away_from = i;
        away.push_back(cents[i]);
        if (away.size() < points_in(may_be_mistaken(quantile(away, 0.5) - here) ? leap_held : pitch_held)) continue;
        changes.push_back(away_from);
        note = away;
        away.clear();
    }
    return changes;
}

/// Points at which the level is lowest between two strokes.
std::vector<std::size_t> dips(std::span<const TrackPoint> points, const Range& range) {
    std::vector<double> level;  // over three points
    for (std::size_t i = range.from; i < range.to; ++i) {
        double sum = 0.0;
        std::size_t count = 0;
        for (std::size_t j = std::max(i, range.from + 1) - 1; j < std::min(i + 2, range.to); ++j, ++count)
            sum += level_db(points[j]);
        level.push_back(sum / static_cast<double>(count));
    }
    std::vector<std::size_t> found;
    const std::size_t reach = points_in(dip_reach);
    for (std::size_t i = 0; i < level.size(); ++i) {
        const std::size_t first = i < reach ? 0 : i - reach;
        const std::size_t last = std::min(level.size(), i + reach);
        const auto at = [&](std::size_t k) { return level.begin() + static_cast<std::ptrdiff_t>(k); };
        // The lowest for as long as the level stays under the tops on both sides.
        const double depth =
            std::min(*std::max_element(at(first), at(i) + 1), *std::max_element(at(i), at(last))) - level[i];
        const bool lost = !has_pitch(points[range.from + i]);
        if (depth < (lost ? unpitched_dip_db : dip_db)) continue;
        if (!found.empty()) {
            const std::size_t before = found.back() - range.from;
            const double between = *std::max_element(at(before), at(i) + 1);
            const bool same = between - std::max(level[i], level[before]) < unpitched_dip_db;
            if (same && level[i] < level[before]) found.back() = range.from + i;
            if (same) continue;
        }
        found.push_back(range.from + i);
    }
    return found;
}

/// Dips at which the pitch stays clear and that come as regularly as vibrato does are none between strokes.
void drop_vibrato(std::span<const TrackPoint> points, std::vector<std::size_t>& found) {
    std::vector<bool> regular(found.size(), false);
    for (std::size_t i = 1; i + 1 < found.size(); ++i) {
        const double before = static_cast<double>(found[i] - found[i - 1]) * track_step;
        const double after = static_cast<double>(found[i + 1] - found[i]) * track_step;
        if (std::max(before, after) > slowest_vibrato ||
            std::max(before, after) > vibrato_evenness * std::min(before, after))
            continue;
        regular[i - 1] = regular[i] = regular[i + 1] = true;
    }
    std::vector<std::size_t> kept;
    for (std::size_t i = 0; i < found.size(); ++i)
        if (!regular[i] || !has_pitch(points[found[i]])) kept.push_back(found[i]);
    found = kept;
}

/// A short piece whose pitch may be a mistaken octave of its neighbour's belongs to that.
void join_mistaken(const std::vector<double>& cents, const std::vector<std::size_t>& dips, std::vector<Range>& pieces) {
    const auto pitch_of = [&](const Range& piece) {
        std::vector<double> pitches;
        for (std::size_t i = piece.from; i < piece.to; ++i)
            if (cents[i] >= 0.0) pitches.push_back(cents[i]);
        return pitches.empty() ? -1.0 : quantile(pitches, 0.5);
    };
    for (std::size_t i = 0; i + 1 < pieces.size();) {
        const Range& a = pieces[i];
        const Range& b = pieces[i + 1];
        const bool brief = std::min(a.to - a.from, b.to - b.from) < points_in(leap_held);
        const double low = pitch_of(a);
        const double high = pitch_of(b);
        const bool known_dip = std::ranges::find(dips, b.from) != dips.end();
        if (brief && !known_dip && low >= 0.0 && high >= 0.0 && may_be_mistaken(high - low)) {
            pieces[i].to = b.to;
            pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        } else {
            ++i;
        }
    }
}

/// Pieces of a range between cuts; those too short go to the piece before.
std::vector<Range> cut(const Range& range, std::vector<std::size_t> cuts) {
    std::ranges::sort(cuts);
    std::vector<Range> pieces;
    std::size_t from = range.from;
    for (const std::size_t at : cuts) {
        if (at - from < points_in(shortest_sound) || range.to - at < points_in(shortest_sound)) continue;
        pieces.push_back({from, at});
        from = at;
    }
    pieces.push_back({from, range.to});
    return pieces;
}

NoteSpan span_of(std::span<const TrackPoint> points, const std::vector<double>& cents, const Range& piece) {
    std::vector<double> levels;
    std::vector<double> pitches;
    for (std::size_t i = piece.from; i < piece.to; ++i) {
        levels.push_back(level_db(points[i]));
        if (cents[i] >= 0.0) pitches.push_back(cents[i]);
    }
    const bool pitched = 3 * pitches.size() >= piece.to - piece.from;
    const double usual = quantile(levels, 0.75);
    const double pitch = quantile(pitches, 0.5);
    Range best{piece.from, piece.from};
    Range now = best;
    for (std::size_t i = piece.from; i < piece.to; ++i) {
        const bool in_tune = !pitched || (cents[i] >= 0.0 && std::abs(cents[i] - pitch) < steady_cents);
        const bool steady = in_tune && std::abs(level_db(points[i]) - usual) < steady_db;
        if (!steady) continue;
        // a moment off does not end it
        now = i - now.to <= points_in(0.02) && now.to > now.from ? Range{now.from, i + 1} : Range{i, i + 1};
        if (now.to - now.from > best.to - best.from) best = now;
    }
    const auto time = [&](std::size_t i) { return static_cast<double>(i) * track_step; };
    return {.start = time(piece.from),
            .steady_from = time(best.from),
            .steady_to = time(best.to),
            .end = time(piece.to),
            .pitched = pitched};
}

}  // namespace

Loudness loudness_of(std::span<const TrackPoint> points) {
    std::vector<double> levels;
    std::vector<double> unpitched;
    for (const TrackPoint& point : points) {
        levels.push_back(point.level);
        if (!has_pitch(point)) unpitched.push_back(point.level);
    }
    Loudness loudness{.peak = quantile(levels, 0.99), .floor = 0.0, .least = 0.0};
    if (unpitched.size() >= points_in(shortest_silence)) loudness.floor = quantile(unpitched, 0.1);
    const double over_floor =
        std::min(loudness.floor * ratio_from_db(over_floor_db), loudness.peak * ratio_from_db(-least_range_db));
    loudness.least = std::max({loudness.peak * ratio_from_db(-most_range_db), over_floor, silent_level});
    return loudness;
}

std::vector<NoteSpan> find_notes(std::span<const TrackPoint> points) {
    std::vector<NoteSpan> notes;
    const std::vector<double> cents = smooth_cents(points);
    for (const Range& range : sounding(points, loudness_of(points).least)) {
        std::vector<std::size_t> cuts = pitch_changes(cents, range);
        std::vector<std::size_t> strokes = dips(points, range);
        drop_vibrato(points, strokes);
        for (const std::size_t dip : strokes) {
            const bool known = std::ranges::any_of(
                cuts, [&](std::size_t at) { return std::max(at, dip) - std::min(at, dip) < points_in(0.08); });
            if (!known) cuts.push_back(dip);
        }
        std::vector<Range> pieces = cut(range, cuts);
        join_mistaken(cents, strokes, pieces);
        for (const Range& piece : pieces) notes.push_back(span_of(points, cents, piece));
    }
    return notes;
}

}  // namespace analysis
