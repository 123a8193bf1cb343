// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/match/body_prior.hpp"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace sim::match {

/// Covariance of the shared response between two sets of places, dB².
Eigen::MatrixXd body_covariance(const BodyPrior& prior, std::span<const double> octaves,
                                std::span<const double> other_octaves);

/// What one note says of the body at its partials, less what is expected of it.
struct BodyMessage {
    std::vector<double> octaves;
    Eigen::VectorXd residual;    ///< dB
    Eigen::MatrixXd covariance;  ///< dB², of its errors, its own gain left out
};

/// What is believed of the body at some note's partials, less what is expected of it; that note's own gain included.
struct BodyBelief {
    Eigen::VectorXd mean;        ///< dB
    Eigen::MatrixXd covariance;  ///< dB²
};

/// The body given what notes say of it; the prior where there are none.
BodyBelief body_belief(const BodyPrior& prior, std::span<const double> octaves, std::span<const BodyMessage> messages);

}  // namespace sim::match
