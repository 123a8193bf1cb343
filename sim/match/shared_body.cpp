// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/shared_body.hpp"

#include <Eigen/Cholesky>

#include <cmath>

namespace sim::match {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

double matern(double distance, double length) {
    const double a = std::sqrt(3.0) * distance / length;
    return (1.0 + a) * std::exp(-a);
}

}  // namespace

Eigen::MatrixXd body_covariance(const BodyPrior& prior, std::span<const double> octaves,
                                std::span<const double> other_octaves) {
    Eigen::MatrixXd covariance(octaves.size(), other_octaves.size());
    for (std::size_t i = 0; i < octaves.size(); ++i)
        for (std::size_t j = 0; j < other_octaves.size(); ++j) {
            const double distance = std::abs(octaves[i] - other_octaves[j]);
            const double far = distance / prior.long_octaves;
            covariance(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) =
                prior.gain * prior.gain + prior.long_deviation * prior.long_deviation * std::exp(-0.5 * far * far) +
                prior.short_deviation * prior.short_deviation * matern(distance, prior.short_octaves);
        }
    return covariance;
}

BodyBelief body_belief(const BodyPrior& prior, std::span<const double> octaves, std::span<const BodyMessage> messages) {
    BodyBelief belief{.mean = VectorXd::Zero(static_cast<Index>(octaves.size())),
                      .covariance = body_covariance(prior, octaves, octaves)};
    std::vector<double> others;
    for (const BodyMessage& message : messages)
        others.insert(others.end(), message.octaves.begin(), message.octaves.end());
    const double own_gain = prior.note_gain * prior.note_gain;
    if (!others.empty()) {
        MatrixXd heard = body_covariance(prior, others, others);
        VectorXd residual(static_cast<Index>(others.size()));
        Index at = 0;
        for (const BodyMessage& message : messages) {
            const Index count = message.residual.size();
            heard.block(at, at, count, count) += message.covariance;
            heard.block(at, at, count, count).array() += own_gain;
            residual.segment(at, count) = message.residual;
            at += count;
        }
        const Eigen::LLT<MatrixXd> factor(heard);
        const MatrixXd across = body_covariance(prior, others, octaves);
        belief.mean = across.transpose() * factor.solve(residual);
        belief.covariance -= across.transpose() * factor.solve(across);
    }
    belief.covariance.array() += own_gain;
    return belief;
}

}  // namespace sim::match
