// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/stroke_posterior.hpp"

#include "sim/match/shared_body.hpp"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>
#include <optional>

namespace sim::match {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

/// Heard less what the stroke and the mean body give.
VectorXd residual_of(const ComparedNote& note, const ModelledStroke& stroke) {
    VectorXd residual(static_cast<Index>(note.numbers.size()));
    for (std::size_t k = 0; k < note.numbers.size(); ++k) {
        const auto n = static_cast<std::size_t>(note.numbers[k] - 1);
        residual[static_cast<Index>(k)] = note.levels[k] - stroke.levels[n] - note.body_mean[k];
    }
    return residual;
}

/// What scatters from partial to partial, dB².
VectorXd error_of(const ComparedNote& note, const ModelledStroke& stroke, const BodyPrior& prior) {
    VectorXd error(static_cast<Index>(note.numbers.size()));
    for (std::size_t k = 0; k < note.numbers.size(); ++k) {
        const auto n = static_cast<std::size_t>(note.numbers[k] - 1);
        error[static_cast<Index>(k)] = note.variances[k] + stroke.variances[n] + prior.model_error * prior.model_error;
    }
    return error;
}

NormalFit fit_of(const ComparedNote& note, const ModelledStroke& stroke, const BodyBelief& belief,
                 const BodyPrior& prior) {
    MatrixXd covariance = belief.covariance;
    covariance.diagonal() += error_of(note, stroke, prior);
    return normal_fit(residual_of(note, stroke) - belief.mean, covariance);
}

/// Logs turned into weights that sum to 1 over all candidates.
void normalise(std::vector<std::vector<double>>& logs) {
    double most = -std::numeric_limits<double>::infinity();
    for (const std::vector<double>& some : logs)
        for (const double log : some) most = std::max(most, log);
    double sum = 0.0;
    for (std::vector<double>& some : logs)
        for (double& log : some) sum += log = std::exp(log - most);
    for (std::vector<double>& weights : logs)
        for (double& weight : weights) weight /= sum;
}

/// Weighs all strokes of a note over a body.
StrokePosterior weighed(const ComparedNote& note, const BodyBelief& belief, const BodyPrior& prior) {
    StrokePosterior posterior;
    for (const std::vector<ModelledStroke>& strokes : note.candidates) {
        std::vector<double>& logs = posterior.weights.emplace_back();
        for (const ModelledStroke& stroke : strokes)
            logs.push_back(fit_of(note, stroke, belief, prior).log_density -
                           std::log(static_cast<double>(strokes.size())));
    }
    normalise(posterior.weights);
    double most = -1.0;
    for (std::size_t c = 0; c < posterior.weights.size(); ++c) {
        const double sum = std::accumulate(posterior.weights[c].begin(), posterior.weights[c].end(), 0.0);
        if (sum <= most) continue;
        most = sum;
        posterior.best_candidate = c;
    }
    const std::vector<double>& likeliest = posterior.weights[posterior.best_candidate];
    posterior.best_stroke = static_cast<std::size_t>(std::ranges::max_element(likeliest) - likeliest.begin());
    const ModelledStroke& best = note.candidates[posterior.best_candidate][posterior.best_stroke];
    posterior.misfit = fit_of(note, best, belief, prior).chi_square / static_cast<double>(note.numbers.size());
    return posterior;
}

/// What a note with uncertain strokes says of the body: mean and covariance of its residuals; nothing where none fits.
std::optional<BodyMessage> message_of(const ComparedNote& note, const StrokePosterior& posterior,
                                      const BodyPrior& prior) {
    constexpr double negligible = 1e-6;
    if (posterior.misfit > misfit_limit) return std::nullopt;
    const auto count = static_cast<Index>(note.numbers.size());
    BodyMessage message{
        .octaves = note.octaves, .residual = VectorXd::Zero(count), .covariance = MatrixXd::Zero(count, count)};
    VectorXd errors = VectorXd::Zero(count);
    for (std::size_t c = 0; c < note.candidates.size(); ++c)
        for (std::size_t s = 0; s < note.candidates[c].size(); ++s) {
            const double weight = posterior.weights[c][s];
            if (weight < negligible) continue;
            const VectorXd residual = residual_of(note, note.candidates[c][s]);
            message.residual += weight * residual;
            message.covariance += weight * residual * residual.transpose();
            errors += weight * error_of(note, note.candidates[c][s], prior);
        }
    message.covariance -= message.residual * message.residual.transpose();
    message.covariance.diagonal() += errors;
    return message;
}

/// What the notes nearest to one say, itself left out.
std::vector<BodyMessage> around(const std::vector<std::optional<BodyMessage>>& messages, std::size_t note) {
    constexpr std::size_t most_others = 11;
    std::vector<BodyMessage> others;
    for (std::size_t away = 1; away < messages.size(); ++away) {
        if (note >= away && others.size() < most_others && messages[note - away])
            others.push_back(*messages[note - away]);
        if (note + away < messages.size() && others.size() < most_others && messages[note + away])
            others.push_back(*messages[note + away]);
    }
    return others;
}

/// What a note says of the body as if its likeliest stroke were known.
std::optional<BodyMessage> likeliest_message(const ComparedNote& note, const StrokePosterior& posterior,
                                             const BodyPrior& prior) {
    const ModelledStroke& best = note.candidates[posterior.best_candidate][posterior.best_stroke];
    return BodyMessage{.octaves = note.octaves,
                       .residual = residual_of(note, best),
                       .covariance = MatrixXd(error_of(note, best, prior).asDiagonal())};
}

void add_bodies(std::span<const ComparedNote> notes, std::vector<StrokePosterior>& posteriors, const BodyPrior& prior) {
    std::vector<std::optional<BodyMessage>> messages;
    for (std::size_t i = 0; i < notes.size(); ++i)
        messages.push_back(likeliest_message(notes[i], posteriors[i], prior));
    for (std::size_t i = 0; i < notes.size(); ++i) {
        std::vector<BodyMessage> heard = around(messages, i);
        heard.push_back(*messages[i]);
        const BodyBelief belief = body_belief(prior, notes[i].octaves, heard);
        const double own_gain = (messages[i]->residual - belief.mean).mean();
        for (std::size_t k = 0; k < notes[i].octaves.size(); ++k) {
            const auto at = static_cast<Index>(k);
            posteriors[i].body.push_back(notes[i].body_mean[k] + belief.mean[at] + own_gain);
            posteriors[i].body_deviation.push_back(std::sqrt(std::max(0.0, belief.covariance(at, at))));
        }
    }
}

}  // namespace

ComparedNote compared_note(std::span<const HeardLevel> heard, const Bridge& bridge,
                           std::vector<std::vector<ModelledStroke>> candidates) {
    std::size_t partials = compared_partials;
    for (const auto& strokes : candidates)
        for (const ModelledStroke& stroke : strokes) partials = std::min(partials, stroke.levels.size());
    ComparedNote note;
    for (const HeardLevel& level : heard) {
        if (!level.usable || static_cast<std::size_t>(level.number) > partials) continue;
        note.octaves.push_back(std::log2(level.hz));
        note.numbers.push_back(level.number);
        note.levels.push_back(level.level);
        note.variances.push_back(level.spread * level.spread);
    }
    note.body_mean = body_mean(bridge, note.octaves);
    note.candidates = std::move(candidates);
    return note;
}

std::vector<StrokePosterior> stroke_posteriors(std::span<const ComparedNote> notes, const BodyPrior& prior,
                                               int rounds) {
    std::vector<StrokePosterior> posteriors;
    std::vector<std::optional<BodyMessage>> messages;
    for (const ComparedNote& note : notes) {
        posteriors.push_back(weighed(note, body_belief(prior, note.octaves, {}), prior));
        messages.push_back(message_of(note, posteriors.back(), prior));
    }
    for (int round = 0; notes.size() > 1 && round < rounds; ++round)
        for (std::size_t i = 0; i < notes.size(); ++i) {
            posteriors[i] = weighed(notes[i], body_belief(prior, notes[i].octaves, around(messages, i)), prior);
            messages[i] = message_of(notes[i], posteriors[i], prior);
        }
    add_bodies(notes, posteriors, prior);
    return posteriors;
}

NormalFit normal_fit(const VectorXd& residual, const MatrixXd& covariance) {
    const Eigen::LLT<MatrixXd> factor(covariance);
    const VectorXd whitened = factor.matrixL().solve(residual);
    double log_determinant = 0.0;
    const auto& lower = factor.matrixLLT();
    for (Index k = 0; k < lower.rows(); ++k) log_determinant += 2.0 * std::log(lower(k, k));
    const double chi_square = whitened.squaredNorm();
    const double constant = static_cast<double>(residual.size()) * std::log(2.0 * std::numbers::pi);
    return {.log_density = -0.5 * (chi_square + log_determinant + constant), .chi_square = chi_square};
}

}  // namespace sim::match
