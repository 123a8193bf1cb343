// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/match/body_prior.hpp"
#include "sim/match/heard_levels.hpp"
#include "sim/match/modelled_strokes.hpp"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace sim::match {

/// A note of a recording beside the strokes that it may be of.
struct ComparedNote {
    std::vector<double> octaves;                          ///< log2 of the partials' Hz, rising
    std::vector<int> numbers;                             ///< of those partials
    std::vector<double> levels;                           ///< dB, as heard
    std::vector<double> variances;                        ///< dB², of that measure
    std::vector<double> body_mean;                        ///< dB, expected of the body there
    std::vector<std::vector<ModelledStroke>> candidates;  ///< a list of strokes for each string it may be on
};

/// Usable levels only, and only partials that every stroke has.
ComparedNote compared_note(std::span<const HeardLevel> heard, const Bridge& bridge,
                           std::vector<std::vector<ModelledStroke>> candidates);

/// Where the likeliest stroke of a note fits worse than this (chi² a partial), nothing is made of it.
inline constexpr double misfit_limit = 2.0;

/// What may be said of a note's stroke and of the body.
struct StrokePosterior {
    std::vector<std::vector<double>> weights;  ///< [candidate][stroke], sum 1 over all
    std::size_t best_candidate = 0;            ///< with the greatest sum of weights
    std::size_t best_stroke = 0;               ///< the likeliest of its strokes
    double misfit = 0.0;  ///< of the likeliest stroke: chi² a partial; about 1 or less where the model holds
    std::vector<double>
        body;  ///< dB, response at the partials, this note's gain included, given all notes' likeliest strokes
    std::vector<double> body_deviation;  ///< dB
};

/// Likelihoods of each note's strokes, all over one unknown body.
///
/// level heard = level of the stroke's bridge force + body(f) + gain + error, dB, all Gaussian: the body a process over
/// log frequency (BodyPrior), integrated out; errors of measure, of the stroke (its scatter) and of the model.  Each
/// candidate string is as likely as the others beforehand, and on it each of its strokes, which stand evenly in log
/// contact point and log force.  Of several notes each takes the body as the others, with their own strokes uncertain,
/// leave it (their residuals' mean and covariance over their weights); `rounds` times in turn, over the eleven nearest
/// notes that fit.
///
/// threads  any
std::vector<StrokePosterior> stroke_posteriors(std::span<const ComparedNote> notes, const BodyPrior& prior,
                                               int rounds = 4);

/// Log of a normal density: residual r, covariance C; and r' C^-1 r.
struct NormalFit {
    double log_density = 0.0;
    double chi_square = 0.0;
};
NormalFit normal_fit(const Eigen::VectorXd& residual, const Eigen::MatrixXd& covariance);

}  // namespace sim::match
