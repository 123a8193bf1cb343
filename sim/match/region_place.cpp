// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/region_place.hpp"

namespace sim::match {

BandPlace place_in(const Region& region, const Band& band) {
    if (region.high < band.near || region.low > band.far) return BandPlace::outside;
    return region.low >= band.near && region.high <= band.far ? BandPlace::inside : BandPlace::partly;
}

std::optional<BandPlace> place_in_stretch(const NoteMatch& note) {
    if (note.in_band != BandPlace::no_band || !note.band->stretch) return std::nullopt;
    return place_in(note.strings.front().region->contact, *note.band->stretch);
}

}  // namespace sim::match
