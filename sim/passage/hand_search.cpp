// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/hand_search.hpp"

#include <algorithm>
#include <limits>

namespace sim::passage {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr std::size_t most_compared = 50'000'000;  // notes, while other ways are looked for

/// One choice for a note, with the cheapest ways to it and on from it.
struct Choice {
    HandState state;
    double own = 0.0;
    double so_far = never;  ///< from the beginning up to it, its own cost included
    double onward = never;  ///< after it
    std::size_t before = 0;
    std::size_t after = 0;
};
using Layer = std::vector<Choice>;

/// Every choice for a note; where the hand has been before matters to an open string only.
Layer choices(const Hand& hand, std::size_t i) {
    Layer layer;
    for (int string = 0; string < hand.strings(); ++string)
        for (int finger = 0; finger <= 4; ++finger)
            for (int place = finger == 0 ? 0 : 1; place <= hand.places(); ++place) {
                const HandState state{string, finger, place};
                if (const auto own = hand.note(i, state)) layer.push_back({.state = state, .own = *own});
            }
    return layer;
}

void begin(const Hand& hand, Layer& layer) {
    for (Choice& choice : layer)
        if (const auto cost = hand.begin(choice.state)) choice.so_far = *cost + choice.own;
}

void step_forwards(const Hand& hand, std::size_t to_note, const Layer& from, Layer& to) {
    for (Choice& choice : to)
        for (std::size_t k = 0; k < from.size(); ++k) {
            if (from[k].so_far >= choice.so_far) continue;  // no way over it can be cheaper
            const auto move = hand.move(to_note, from[k].state, choice.state);
            if (!move || from[k].so_far + *move + choice.own >= choice.so_far) continue;
            choice.so_far = from[k].so_far + *move + choice.own;
            choice.before = k;
        }
}

void step_backwards(const Hand& hand, std::size_t to_note, Layer& from, const Layer& to) {
    for (Choice& choice : from)
        for (std::size_t k = 0; k < to.size(); ++k) {
            if (to[k].own + to[k].onward >= choice.onward) continue;
            const auto move = hand.move(to_note, choice.state, to[k].state);
            if (!move || *move + to[k].own + to[k].onward >= choice.onward) continue;
            choice.onward = *move + to[k].own + to[k].onward;
            choice.after = k;
        }
}

std::vector<Layer> graph(const Hand& hand) {
    std::vector<Layer> layers;
    for (std::size_t i = 0; i < hand.notes(); ++i) layers.push_back(choices(hand, i));
    begin(hand, layers.front());
    for (std::size_t i = 1; i < layers.size(); ++i) step_forwards(hand, i, layers[i - 1], layers[i]);
    for (Choice& choice : layers.back()) choice.onward = hand.end(choice.state);
    for (std::size_t i = layers.size() - 1; i > 0; --i) step_backwards(hand, i, layers[i - 1], layers[i]);
    return layers;
}

/// A choice that a way may lead through.
struct Through {
    std::size_t note = 0;
    std::size_t choice = 0;
    double cost = never;
};

std::vector<Through> throughs(const std::vector<Layer>& layers) {
    std::vector<Through> all;
    for (std::size_t i = 0; i < layers.size(); ++i)
        for (std::size_t k = 0; k < layers[i].size(); ++k)
            if (const double cost = layers[i][k].so_far + layers[i][k].onward; cost < never)
                all.push_back({i, k, cost});
    std::ranges::stable_sort(all, {}, &Through::cost);
    return all;
}

std::vector<HandState> way_through(const std::vector<Layer>& layers, const Through& through) {
    std::vector<HandState> states(layers.size());
    for (std::size_t i = through.note + 1, k = through.choice; i-- > 0;) {
        states[i] = layers[i][k].state;
        k = layers[i][k].before;
    }
    for (std::size_t i = through.note, k = through.choice; i < layers.size(); ++i) {
        states[i] = layers[i][k].state;
        k = layers[i][k].after;
    }
    return states;
}

int notes_apart(const std::vector<HandState>& a, const std::vector<HandState>& b) {
    int apart = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        const bool other_hand = a[i].place != b[i].place && a[i].finger != b[i].finger;
        if (a[i].string != b[i].string || other_hand) ++apart;
    }
    return apart;
}

}  // namespace

std::optional<double> cost_of(const Hand& hand, const std::vector<HandState>& states) {
    const auto start = hand.begin(states.front());
    if (!start) return std::nullopt;
    double cost = *start;
    for (std::size_t i = 0; i < states.size(); ++i) {
        const auto own = hand.note(i, states[i]);
        const auto move = i == 0 ? std::optional(0.0) : hand.move(i, states[i - 1], states[i]);
        if (!own || !move) return std::nullopt;
        cost += *move + *own;
    }
    return cost + hand.end(states.back());
}

std::vector<HandWay> best_ways(const Hand& hand, int ways, int least_apart) {
    const std::vector<Layer> layers = graph(hand);
    std::vector<HandWay> found;
    std::size_t looked_at = 0;
    for (const Through& through : throughs(layers)) {
        if (static_cast<int>(found.size()) >= ways || ++looked_at > most_compared / hand.notes()) break;
        std::vector<HandState> states = way_through(layers, through);
        const bool differs = std::ranges::all_of(
            found, [&](const HandWay& way) { return notes_apart(way.states, states) >= least_apart; });
        if (differs) found.push_back({std::move(states), 0.0});
    }
    for (HandWay& way : found) way.cost = cost_of(hand, way.states).value();
    return found;
}

}  // namespace sim::passage
