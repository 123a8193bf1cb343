// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/room.hpp"

#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <vector>

namespace tests {
namespace {

/// Direct sound of 1 and a tail of noise that dies away.
std::vector<double> impulse_response(const Room& room, double rate, std::size_t most) {
    const auto from = static_cast<std::size_t>(room.delay * rate);
    const std::size_t length = std::min(most, from + static_cast<std::size_t>(room.decay * rate) + 1);
    std::vector<double> response(length, 0.0);
    Dice dice(room.seed, 0);
    double energy = 0.0;
    for (std::size_t i = from; i < length; ++i) {
        const double seconds = static_cast<double>(i - from) / rate;
        response[i] = dice.normal() * std::pow(10.0, -3.0 * seconds / room.decay);
        energy += response[i] * response[i];
    }
    const double scale = energy > 0.0 ? analysis::ratio_from_db(room.tail_db) / std::sqrt(energy) : 0.0;
    for (double& value : response) value *= scale;
    response.front() += 1.0;
    return response;
}

double microphone_db(const Room& room, double hz) {
    constexpr double middle = 700.0;  // Hz, where a tilt changes nothing
    constexpr double lowest = 20.0;
    double db = room.tilt_db * std::log2(std::max(hz, lowest) / middle);
    for (const Room::Bump& bump : room.bumps) {
        const double away = std::log2(std::max(hz, lowest) / bump.hz) / bump.octaves;
        db += bump.db * std::exp(-0.5 * away * away);
    }
    return db;
}

}  // namespace

Room drawn_room(Dice& dice) {
    Room room{.decay = dice.by_ratio(0.12, 0.9),
              .delay = dice.by_ratio(0.002, 0.015),
              .tail_db = dice.between(-20.0, 0.0),
              .tilt_db = dice.between(-2.0, 2.0),
              .bumps = {},
              .seed = static_cast<std::uint32_t>(dice.below(1000000))};
    for (Room::Bump& bump : room.bumps)
        bump = {.hz = dice.by_ratio(80.0, 8000.0), .octaves = dice.by_ratio(0.15, 1.0), .db = dice.between(-8.0, 8.0)};
    return room;
}

analysis::Signal in_room(const analysis::Signal& sound, const Room& room) {
    const std::size_t count = sound.samples.size();
    const std::vector<double> response = impulse_response(room, sound.sample_rate, count);
    const std::size_t length = analysis::common_length(count + response.size());
    auto bins = analysis::spectrum(sound.samples, length);
    const auto factors = analysis::spectrum(response, length);
    for (std::size_t k = 0; k < bins.size(); ++k) {
        const double hz = static_cast<double>(k) * sound.sample_rate / static_cast<double>(length);
        bins[k] *= factors[k] * analysis::ratio_from_db(microphone_db(room, hz));
    }
    analysis::Signal result{.samples = analysis::inverse_spectrum(bins, length), .sample_rate = sound.sample_rate};
    result.samples.resize(count);
    return result;
}

}  // namespace tests
