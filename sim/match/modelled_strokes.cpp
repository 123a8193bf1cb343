// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/modelled_strokes.hpp"

#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>

namespace sim::match {
namespace {

constexpr double pitch_tolerance = 60.0;  // cents
constexpr double prior_weight = 4.0;      // of the mean over all strokes, in neighbours
constexpr double unknown_scatter = 25.0;  // dB², where a note has no three neighbours at all
constexpr int near_contacts = 3;
constexpr int near_forces = 1;

/// Sum and count of squares.
struct Sum {
    double sum = 0.0;
    double count = 0.0;
};

class Scatter {
public:
    explicit Scatter(const StrokeSpectra& spectra) : spectra_(spectra), partials_(0) {
        for (const StrokeSpectrum& stroke : spectra.strokes) partials_ = std::max(partials_, stroke.levels.size());
        squares_.resize(spectra.strokes.size());
        means_.resize(partials_);
        for (std::size_t x = 1; x + 1 < spectra.contact_points.size(); ++x)
            for (std::size_t j = 0; j < spectra.forces.size(); ++j) add(x, j);
    }

    /// Of one stroke's partials, smoothed over neighbouring ones.
    std::vector<double> variances(std::size_t contact, std::size_t force) const {
        std::vector<double> rough(spectra_.at(contact, force).levels.size());
        for (std::size_t n = 0; n < rough.size(); ++n) rough[n] = around(contact, force, n);
        std::vector<double> smooth(rough.size());
        for (std::size_t n = 0; n < rough.size(); ++n) {
            const double below = rough[n > 0 ? n - 1 : n];
            const double above = rough[std::min(n + 1, rough.size() - 1)];
            smooth[n] = (below + rough[n] + above) / 3.0;
        }
        return smooth;
    }

private:
    void add(std::size_t x, std::size_t j) {
        const std::vector<double>& low = spectra_.at(x - 1, j).levels;
        const std::vector<double>& middle = spectra_.at(x, j).levels;
        const std::vector<double>& high = spectra_.at(x + 1, j).levels;
        std::vector<double>& squares = squares_[x * spectra_.forces.size() + j];
        squares.resize(std::min({low.size(), middle.size(), high.size()}));
        for (std::size_t n = 0; n < squares.size(); ++n) {
            const double away = middle[n] - 0.5 * (low[n] + high[n]);
            squares[n] = 2.0 / 3.0 * away * away;
            means_[n].sum += squares[n];
            means_[n].count += 1.0;
        }
    }

    double mean(std::size_t n) const {
        for (std::size_t k = n + 1; k-- > 0;)  // the highest partials may be in too few strokes
            if (means_[k].count > 0.0) return means_[k].sum / means_[k].count;
        return unknown_scatter;
    }

    double around(std::size_t contact, std::size_t force, std::size_t n) const {
        Sum sum{prior_weight * mean(n), prior_weight};
        const auto [x0, x1] = near(contact, near_contacts, spectra_.contact_points.size());
        const auto [j0, j1] = near(force, near_forces, spectra_.forces.size());
        for (std::size_t x = x0; x <= x1; ++x)
            for (std::size_t j = j0; j <= j1; ++j) {
                const std::vector<double>& squares = squares_[x * spectra_.forces.size() + j];
                if (n >= squares.size()) continue;
                sum.sum += squares[n];
                sum.count += 1.0;
            }
        return sum.sum / sum.count;
    }

    static std::pair<std::size_t, std::size_t> near(std::size_t index, int away, std::size_t count) {
        const auto reach = static_cast<std::size_t>(away);
        return {index > reach ? index - reach : 0, std::min(count - 1, index + reach)};
    }

    const StrokeSpectra& spectra_;
    std::size_t partials_;
    std::vector<std::vector<double>> squares_;  // [stroke][partial]
    std::vector<Sum> means_;                    // [partial]
};

}  // namespace

std::vector<ModelledStroke> modelled_strokes(const StrokeSpectra& spectra) {
    const double nominal = fundamental(spectra.note.string);
    const Scatter scatter(spectra);
    std::vector<ModelledStroke> strokes;
    for (std::size_t x = 0; x < spectra.contact_points.size(); ++x)
        for (std::size_t j = 0; j < spectra.forces.size(); ++j) {
            const StrokeSpectrum& stroke = spectra.at(x, j);
            if (stroke.levels.empty() || std::abs(analysis::cents_between(stroke.pitch, nominal)) > pitch_tolerance)
                continue;
            strokes.push_back(
                {.contact = x, .force = j, .levels = stroke.levels, .variances = scatter.variances(x, j)});
        }
    return strokes;
}

}  // namespace sim::match
