// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/fit.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <numeric>

namespace tests {
namespace {

using analysis::motion_count;
using analysis::motion_feature_count;
using Eigen::MatrixXf;
using Eigen::VectorXf;

constexpr int folds = 5;

/// Examples as columns.
struct Table {
    MatrixXf inputs;
    std::vector<int> motions;
    VectorXf weights;  // mean 1
};

void standardise(const std::vector<Example>& examples, analysis::MotionModel& model) {
    const double count = static_cast<double>(examples.size());
    for (std::size_t i = 0; i < motion_feature_count; ++i) {
        double sum = 0.0;
        double squares = 0.0;
        for (const Example& example : examples) {
            sum += example.features[i] / count;
            squares += example.features[i] * example.features[i] / count;
        }
        model.mean.push_back(static_cast<float>(sum));
        model.spread.push_back(static_cast<float>(std::sqrt(std::max(0.0, squares - sum * sum)) + 1e-3));
    }
}

Table table_of(const std::vector<const Example*>& examples, const analysis::MotionModel& model, double evenness) {
    std::array<double, motion_count> counts{};
    for (const Example* example : examples) counts[static_cast<std::size_t>(example->motion)] += 1.0;
    Table table{
        .inputs = MatrixXf(motion_feature_count, examples.size()), .motions = {}, .weights = VectorXf(examples.size())};
    for (Eigen::Index c = 0; c < table.inputs.cols(); ++c) {
        const Example& example = *examples[static_cast<std::size_t>(c)];
        for (std::size_t i = 0; i < motion_feature_count; ++i)
            table.inputs(static_cast<Eigen::Index>(i), c) =
                std::clamp((static_cast<float>(example.features[i]) - model.mean[i]) / model.spread[i], -4.0F, 4.0F);
        table.motions.push_back(example.motion);
        table.weights(c) = static_cast<float>(std::pow(counts[static_cast<std::size_t>(example.motion)], -evenness));
    }
    table.weights *= static_cast<float>(examples.size()) / table.weights.sum();
    return table;
}

/// A weight or bias with what Adam keeps of it (form from memory): every number steps by its running mean slope over
/// the root of its running mean square.
struct Parameter {
    MatrixXf value;
    MatrixXf mean;
    MatrixXf square;

    explicit Parameter(const MatrixXf& start)
        : value(start), mean(MatrixXf::Zero(start.rows(), start.cols())), square(mean) {}

    void step(const MatrixXf& slope, float rate, int steps) {
        mean = 0.9F * mean + 0.1F * slope;
        square = 0.999F * square + 0.001F * slope.cwiseProduct(slope);
        const float fresh_mean = 1.0F - std::pow(0.9F, static_cast<float>(steps));
        const float fresh_square = 1.0F - std::pow(0.999F, static_cast<float>(steps));
        value.array() -= rate * (mean.array() / fresh_mean) / ((square.array() / fresh_square).sqrt() + 1e-8F);
    }
};

struct Layer {
    Parameter weights;
    Parameter biases;
};

/// Shares of the motions, a column an example.
MatrixXf softmax(MatrixXf sums) {
    for (Eigen::Index c = 0; c < sums.cols(); ++c) {
        sums.col(c) = (sums.col(c).array() - sums.col(c).maxCoeff()).exp();
        sums.col(c) /= sums.col(c).sum();
    }
    return sums;
}

class Network {
public:
    Network(const std::vector<std::size_t>& hidden, Dice& dice) {
        std::vector<std::size_t> sizes{motion_feature_count};
        sizes.insert(sizes.end(), hidden.begin(), hidden.end());
        sizes.push_back(motion_count);
        for (std::size_t l = 0; l + 1 < sizes.size(); ++l) {
            const float scale = 1.0F / std::sqrt(static_cast<float>(sizes[l]));
            MatrixXf start(sizes[l + 1], sizes[l]);
            for (float& value : start.reshaped()) value = scale * static_cast<float>(dice.normal());
            layers_.push_back({Parameter(start), Parameter(MatrixXf::Zero(start.rows(), 1))});
        }
    }

    /// What each layer gives, the inputs first, the shares last.
    std::vector<MatrixXf> forward(const MatrixXf& inputs) const {
        std::vector<MatrixXf> values{inputs};
        for (std::size_t l = 0; l < layers_.size(); ++l) {
            MatrixXf sums = (layers_[l].weights.value * values.back()).colwise() + layers_[l].biases.value.col(0);
            values.push_back(l + 1 < layers_.size() ? MatrixXf(sums.array().tanh()) : softmax(std::move(sums)));
        }
        return values;
    }

    /// One step down the slope of the weighted cross-entropy.
    void step(const Table& batch, float rate, float decay) {
        const std::vector<MatrixXf> values = forward(batch.inputs);
        MatrixXf error = values.back();
        for (Eigen::Index c = 0; c < error.cols(); ++c) error(batch.motions[static_cast<std::size_t>(c)], c) -= 1.0F;
        error *= batch.weights.asDiagonal();
        error /= static_cast<float>(error.cols());
        ++steps_;
        for (std::size_t l = layers_.size(); l-- > 0;) {
            Layer& layer = layers_[l];
            MatrixXf back;
            if (l > 0) back = (layer.weights.value.transpose() * error).array() * (1.0F - values[l].array().square());
            layer.weights.step(error * values[l].transpose() + decay * layer.weights.value, rate, steps_);
            layer.biases.step(error.rowwise().sum(), rate, steps_);
            error = std::move(back);
        }
    }

    analysis::MotionNetwork written() const {
        analysis::MotionNetwork network;
        for (const Layer& layer : layers_) {
            const MatrixXf rows = layer.weights.value.transpose();  // the inputs of one output side by side
            network.push_back(
                {.inputs = static_cast<std::size_t>(rows.rows()),
                 .outputs = static_cast<std::size_t>(rows.cols()),
                 .weights = {rows.data(), rows.data() + rows.size()},
                 .biases = {layer.biases.value.data(), layer.biases.value.data() + layer.biases.value.size()}});
        }
        return network;
    }

private:
    std::vector<Layer> layers_;
    int steps_ = 0;
};

/// Mean weighted cross-entropy.
double surprise(const Network& network, const Table& table) {
    const MatrixXf shares = network.forward(table.inputs).back();
    double sum = 0.0;
    for (Eigen::Index c = 0; c < shares.cols(); ++c)
        sum -= table.weights(c) * std::log(shares(table.motions[static_cast<std::size_t>(c)], c) + 1e-9F);
    return sum / static_cast<double>(shares.cols());
}

/// Those columns, blurred.
Table batch_of(const Table& table, std::span<const Eigen::Index> columns, double blur, Dice& dice) {
    Table batch{
        .inputs = MatrixXf(table.inputs.rows(), columns.size()), .motions = {}, .weights = VectorXf(columns.size())};
    for (std::size_t c = 0; c < columns.size(); ++c) {
        const auto at = static_cast<Eigen::Index>(c);
        batch.inputs.col(at) = table.inputs.col(columns[c]);
        batch.motions.push_back(table.motions[static_cast<std::size_t>(columns[c])]);
        batch.weights(at) = table.weights(columns[c]);
    }
    for (float& value : batch.inputs.reshaped()) value += static_cast<float>(blur * dice.normal());
    return batch;
}

Network fitted(const Table& seen, const Table& held_out, const FitPlan& plan, Dice& dice) {
    constexpr std::size_t batch = 64;
    Network network(plan.hidden, dice);
    Network best = network;
    double least = 1e300;
    std::vector<Eigen::Index> order(seen.motions.size());
    std::iota(order.begin(), order.end(), Eigen::Index{0});
    for (int epoch = 0; epoch < plan.epochs; ++epoch) {
        for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[dice.below(i)]);
        const double rate = plan.rate * 0.5 * (1.0 + std::cos(std::numbers::pi * epoch / plan.epochs));
        for (std::size_t from = 0; from < order.size(); from += batch) {
            const auto columns = std::span(order).subspan(from, std::min(batch, order.size() - from));
            network.step(batch_of(seen, columns, plan.blur, dice), static_cast<float>(rate),
                         static_cast<float>(plan.decay));
        }
        const double now = surprise(network, held_out);
        if (now < least) {
            least = now;
            best = network;
        }
        if (plan.tells && epoch % 10 == 9)
            std::printf("epoch %d: %.3f seen, %.3f held out, best %.3f\n", epoch + 1, surprise(network, seen), now,
                        least);
    }
    return best;
}

}  // namespace

int fold_of(const Example& example) { return example.scene % folds; }

analysis::MotionModel fit_motions(const std::vector<Example>& examples, const FitPlan& plan) {
    analysis::MotionModel model;
    standardise(examples, model);
    for (int n = 0; n < plan.networks; ++n) {
        std::vector<const Example*> seen;
        std::vector<const Example*> held_out;
        for (const Example& example : examples) (fold_of(example) == n % folds ? held_out : seen).push_back(&example);
        Dice dice(plan.seed, static_cast<std::uint32_t>(n));
        const Network network =
            fitted(table_of(seen, model, plan.evenness), table_of(held_out, model, plan.evenness), plan, dice);
        model.networks.push_back(network.written());
    }
    return model;
}

}  // namespace tests
