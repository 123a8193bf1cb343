// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/motion_weights.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace analysis {

extern const std::string_view motion_weights_text;  // made by CMake of motion_weights.txt

namespace {

constexpr std::size_t most_layers = 8;
constexpr std::size_t most_units = 1024;

/// Numbers of a text, one after the other.
class Numbers {
public:
    explicit Numbers(std::string_view text) : text_(text) {}

    template <class Number>
    Number next() {
        skip();
        Number value{};
        const auto [end, error] = std::from_chars(text_.data(), text_.data() + text_.size(), value);
        if (error != std::errc()) throw std::runtime_error("weights of motions: not a number");
        text_.remove_prefix(static_cast<std::size_t>(end - text_.data()));
        return value;
    }
    std::size_t count(std::size_t most) {
        const auto value = next<std::size_t>();
        if (value == 0 || value > most) throw std::runtime_error("weights of motions: not a size");
        return value;
    }
    std::vector<float> floats(std::size_t count) {
        std::vector<float> values(count);
        for (float& value : values) value = next<float>();
        return values;
    }

private:
    void skip() {
        while (!text_.empty() && (text_.front() == ' ' || text_.front() == '\n' || text_.front() == '#'))
            text_.remove_prefix(text_.front() == '#' ? std::min(text_.find('\n'), text_.size()) : 1);
    }
    std::string_view text_;
};

void put(std::string& text, const std::vector<float>& values) {
    constexpr std::size_t in_a_line = 16;
    char number[32];
    for (std::size_t i = 0; i < values.size(); ++i) {
        const auto end = std::to_chars(number, number + sizeof number, values[i], std::chars_format::general, 3).ptr;
        text.append(number, end);
        text += (i + 1) % in_a_line == 0 || i + 1 == values.size() ? '\n' : ' ';
    }
}

std::vector<float> outputs_of(const MotionNetwork& network, std::vector<float> values) {
    for (std::size_t l = 0; l < network.size(); ++l) {
        const MotionLayer& layer = network[l];
        std::vector<float> sums = layer.biases;
        for (std::size_t o = 0; o < layer.outputs; ++o) {
            const float* weights = layer.weights.data() + o * layer.inputs;
            for (std::size_t i = 0; i < layer.inputs; ++i) sums[o] += weights[i] * values[i];
            if (l + 1 < network.size()) sums[o] = std::tanh(sums[o]);
        }
        values = std::move(sums);
    }
    return values;
}

}  // namespace

std::array<double, motion_count> shares_of(const MotionModel& model, const MotionFeatures& features) {
    std::vector<float> inputs(features.size());
    // Beyond what the fit saw nothing is known: held at four spreads.
    for (std::size_t i = 0; i < inputs.size(); ++i)
        inputs[i] = std::clamp((static_cast<float>(features[i]) - model.mean[i]) / model.spread[i], -4.0F, 4.0F);
    std::array<double, motion_count> shares{};
    for (const MotionNetwork& network : model.networks) {
        const std::vector<float> sums = outputs_of(network, inputs);
        const float greatest = *std::ranges::max_element(sums);
        std::array<double, motion_count> votes{};
        double all = 0.0;
        for (std::size_t m = 0; m < motion_count; ++m) all += votes[m] = std::exp(sums[m] - greatest);
        for (std::size_t m = 0; m < motion_count; ++m)
            shares[m] += votes[m] / all / static_cast<double>(model.networks.size());
    }
    return shares;
}

std::string motion_model_text(const MotionModel& model, std::string_view remark) {
    std::string text = "# " + std::string(remark) + "\n";
    text += "# features, their means, their spreads; networks; of each: layers; of each: units, weights, biases\n";
    text += std::to_string(model.mean.size()) + "\n";
    put(text, model.mean);
    put(text, model.spread);
    text += std::to_string(model.networks.size()) + "\n";
    for (const MotionNetwork& network : model.networks) {
        text += std::to_string(network.size()) + "\n";
        for (const MotionLayer& layer : network) {
            text += std::to_string(layer.outputs) + "\n";
            put(text, layer.weights);
            put(text, layer.biases);
        }
    }
    return text;
}

MotionModel read_motion_model(std::string_view text) {
    Numbers numbers(text);
    if (numbers.count(most_units) != motion_feature_count)
        throw std::runtime_error("weights of motions: fitted to other features");
    MotionModel model{.mean = numbers.floats(motion_feature_count), .spread = numbers.floats(motion_feature_count)};
    for (const float spread : model.spread)
        if (!(spread > 0.0F)) throw std::runtime_error("weights of motions: a spread is not over 0");
    model.networks.resize(numbers.count(most_layers));
    for (MotionNetwork& network : model.networks) {
        network.resize(numbers.count(most_layers));
        std::size_t inputs = motion_feature_count;
        for (MotionLayer& layer : network) {
            layer.inputs = inputs;
            layer.outputs = numbers.count(most_units);
            layer.weights = numbers.floats(layer.inputs * layer.outputs);
            layer.biases = numbers.floats(layer.outputs);
            inputs = layer.outputs;
        }
        if (inputs != motion_count) throw std::runtime_error("weights of motions: not six motions");
    }
    return model;
}

const MotionModel& motion_model() {
    static const MotionModel model = read_motion_model(motion_weights_text);
    return model;
}

}  // namespace analysis
