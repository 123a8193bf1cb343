// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/note_kinds.hpp"

#include <algorithm>

namespace sim::passage {

namespace {

struct KindKey {
    int string;
    double stop;
    Player player;

    bool operator==(const KindKey&) const = default;
};

}  // namespace

std::vector<NoteKind> kinds_of(std::vector<BowedNote>& notes, const Fingering& fingering, const Preset& preset) {
    std::vector<KindKey> keys;
    std::vector<NoteKind> kinds;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        BowedNote& note = notes[i];
        const FingeredNote& place = fingering.notes[i];
        const KindKey key{place.string, place.stop, stroke_player(preset.player, note.stroke, note.duration)};
        const auto known = std::ranges::find(keys, key);
        note.kind = static_cast<int>(known - keys.begin());
        if (known != keys.end()) continue;
        keys.push_back(key);
        const PresetString& string = preset.strings[static_cast<std::size_t>(place.string)];
        kinds.push_back({.note = make_note(preset, string, place.stop), .player = key.player, .band = {}});
        kinds.back().note.force_high = key.player.force_high;
    }
    return kinds;
}

std::vector<std::unique_ptr<KindStudy>> study_kinds(std::vector<NoteKind>& kinds, const MapGrid& grid,
                                                    const Workers& workers) {
    std::vector<std::unique_ptr<KindStudy>> studies(kinds.size());
    for_each_job(static_cast<int>(kinds.size()), workers, [&](int job) {
        const auto i = static_cast<std::size_t>(job);
        NoteKind& kind = kinds[i];
        studies[i] =
            std::make_unique<KindStudy>(started_map(kind.note, kind.player, grid, alone(workers)), kind.player);
        kind.band = find_band(studies[i]->assessment, studies[i]->map, kind.player);
    });
    return studies;
}

}  // namespace sim::passage
