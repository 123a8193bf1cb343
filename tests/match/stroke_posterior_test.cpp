// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/stroke_posterior.hpp"
#include "sim/match/region.hpp"
#include "sim/match/shared_body.hpp"

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

namespace {

using namespace sim::match;
using Eigen::MatrixXd;
using Eigen::VectorXd;

double normal_density(double value, double variance) {
    return std::exp(-0.5 * value * value / variance) / std::sqrt(2.0 * std::numbers::pi * variance);
}

/// source   the definition: the density of residuals = the integral over the body's values at both partials of the
///          body's density times that of the errors, summed over a fine grid
/// expects  normal_fit of the summed covariances to give the same
TEST(BodyMarginal, EqualsTheIntegralOverTheBody) {
    const std::vector<double> octaves{8.0, 8.06};
    const BodyPrior prior{.gain = 3.0, .long_deviation = 2.0, .short_deviation = 4.0};
    const MatrixXd body = body_covariance(prior, octaves, octaves);
    const double error[2] = {1.5 * 1.5, 0.8 * 0.8};
    const VectorXd residual = (VectorXd(2) << 3.0, -2.0).finished();
    const MatrixXd inverse = body.inverse();
    const double scale = 1.0 / (2.0 * std::numbers::pi * std::sqrt(body.determinant()));
    constexpr double step = 0.1;
    double sum = 0.0;
    for (double a = -40.0; a <= 40.0; a += step)
        for (double b = -40.0; b <= 40.0; b += step) {
            const VectorXd values = (VectorXd(2) << a, b).finished();
            sum += scale * std::exp(-0.5 * values.dot(inverse * values)) * normal_density(residual[0] - a, error[0]) *
                   normal_density(residual[1] - b, error[1]) * step * step;
        }
    MatrixXd all = body;
    all(0, 0) += error[0];
    all(1, 1) += error[1];
    EXPECT_NEAR(normal_fit(residual, all).log_density, std::log(sum), 1e-6);
}

/// source   the definition of a conditional mean, by the same kind of sum
TEST(SharedBody, BelievesWhatAnotherNoteSays) {
    const std::vector<double> mine{8.0};
    const std::vector<double> theirs{8.05};
    const BodyPrior prior{.gain = 3.0, .long_deviation = 2.0, .short_deviation = 4.0, .note_gain = 0.0};
    const BodyMessage message{
        .octaves = theirs, .residual = VectorXd::Constant(1, 5.0), .covariance = MatrixXd::Constant(1, 1, 2.0)};
    const BodyBelief belief = body_belief(prior, mine, std::vector<BodyMessage>{message});
    const double var = body_covariance(prior, mine, mine)(0, 0);
    const double across = body_covariance(prior, mine, theirs)(0, 0);
    constexpr double step = 0.02;
    double weight = 0.0, mean = 0.0, square = 0.0;
    for (double a = -40.0; a <= 40.0; a += step) {
        // given a here, the body there has this mean and variance
        const double there = across / var * a;
        const double w = normal_density(a, var) * normal_density(5.0 - there, var - across * across / var + 2.0);
        weight += w;
        mean += w * a;
        square += w * a * a;
    }
    mean /= weight;
    EXPECT_NEAR(belief.mean[0], mean, 1e-6);
    EXPECT_NEAR(belief.covariance(0, 0), square / weight - mean * mean, 1e-6);
}

constexpr int partials = 24;
constexpr int places = 60;

/// Invented strokes: ripples about partial 1/ratio, the higher the firmer.
std::vector<ModelledStroke> rippled_strokes() {
    std::vector<ModelledStroke> strokes;
    for (std::size_t x = 0; x < places; ++x)
        for (std::size_t j = 0; j < 4; ++j) {
            const double ratio = 0.05 * std::pow(8.0, static_cast<double>(x) / (places - 1));
            ModelledStroke stroke{.contact = x, .force = j, .levels = {}, .variances = {}};
            for (int n = 1; n <= partials; ++n) {
                stroke.levels.push_back(-20.0 * std::log10(n) - (0.6 - 0.1 * static_cast<double>(j)) * n +
                                        3.0 * std::cos(2.0 * std::numbers::pi * n * ratio));
                stroke.variances.push_back(0.5 + 0.1 * n);
            }
            strokes.push_back(std::move(stroke));
        }
    return strokes;
}

struct Drawn {
    std::vector<ComparedNote> notes;
    std::vector<std::size_t> places;  ///< true ones
};

/// Notes of one recording drawn from the very model: one body for all, gains, errors.
Drawn drawn_notes(int count, const BodyPrior& prior, std::mt19937& engine) {
    std::normal_distribution<double> normal;
    const std::vector<ModelledStroke> strokes = rippled_strokes();
    Drawn drawn;
    std::vector<double> octaves;
    for (int i = 0; i < count; ++i) {
        const double f0 = std::log2(150.0) + 0.17 * i;
        for (int n = 1; n <= partials; ++n) octaves.push_back(f0 + std::log2(n));
    }
    MatrixXd covariance = body_covariance(prior, octaves, octaves);
    covariance.diagonal().array() += 1e-6;
    const VectorXd white = VectorXd::NullaryExpr(covariance.rows(), [&] { return normal(engine); });
    const VectorXd body = Eigen::LLT<MatrixXd>(covariance).matrixL() * white;
    for (int i = 0; i < count; ++i) {
        ComparedNote note;
        const std::size_t s = engine() % strokes.size();
        const double gain = prior.note_gain * normal(engine);
        for (int n = 1; n <= partials; ++n) {
            const auto k = static_cast<std::size_t>(n - 1);
            const double variance = strokes[s].variances[k] + 0.25 + prior.model_error * prior.model_error;
            note.octaves.push_back(octaves[static_cast<std::size_t>(i) * partials + k]);
            note.numbers.push_back(n);
            note.variances.push_back(0.25);
            note.body_mean.push_back(0.0);
            note.levels.push_back(strokes[s].levels[k] + body[i * partials + n - 1] + gain +
                                  std::sqrt(variance) * normal(engine));
        }
        note.candidates.push_back(strokes);
        drawn.places.push_back(strokes[s].contact);
        drawn.notes.push_back(std::move(note));
    }
    return drawn;
}

struct Share {
    double covered = 0.0;
    double width = 0.0;  ///< mean, ln
};

/// How often regions of 80 % hold the truth.
Share covered_share(int recordings, int notes) {
    std::mt19937 engine(static_cast<unsigned>(17 + notes));
    const BodyPrior prior;
    std::vector<double> ratios;
    for (int x = 0; x < places; ++x) ratios.push_back(0.05 * std::pow(8.0, x / (places - 1.0)));
    Share share;
    for (int r = 0; r < recordings; ++r) {
        const Drawn drawn = drawn_notes(notes, prior, engine);
        const auto posteriors = stroke_posteriors(drawn.notes, prior);
        for (std::size_t i = 0; i < posteriors.size(); ++i) {
            std::vector<double> sums(places);
            for (std::size_t s = 0; s < posteriors[i].weights[0].size(); ++s)
                sums[drawn.notes[i].candidates[0][s].contact] += posteriors[i].weights[0][s];
            const Region region = shortest_region(ratios, sums, 0.8);
            const double truth = ratios[drawn.places[i]];
            if (truth >= region.low && truth <= region.high) share.covered += 1.0 / (recordings * notes);
            share.width += std::log(region.high / region.low) / (recordings * notes);
        }
    }
    return share;
}

/// source   the meaning of a posterior: a region with 80 % of it holds the truth in 80 % of cases, where cases are
/// drawn
///          from the model itself
/// margin   4 standard deviations of 300 draws: 0.09
TEST(StrokePosterior, IsRightAsOftenAsItSaysOfItsOwnModel) {
    const Share single = covered_share(300, 1);
    EXPECT_NEAR(single.covered, 0.8, 0.09);
}

/// expects  notes over one body together to be told more narrowly than alone, and still as often right: the loop of
///          notes informing each other must not make them too sure
TEST(StrokePosterior, OfNotesThatShareABodyIsNarrowerAndStillRight) {
    const Share alone = covered_share(120, 1);
    const Share together = covered_share(40, 6);
    EXPECT_NEAR(together.covered, 0.8, 0.11);
    EXPECT_LT(together.width, alone.width);
}

}  // namespace
