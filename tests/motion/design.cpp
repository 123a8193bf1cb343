// SPDX-License-Identifier: GPL-3.0-or-later
// motion_design FEATURES.csv WEIGHTS.cpp: fits the network that names motions (analysis/motion_weights.cpp).
//
// FEATURES.csv is made if it is not there: strokes of seven presets over changed bodies, which takes half an hour.
#include "analysis/motion_weights.hpp"
#include "tests/motion/heard_strokes.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <random>
#include <sstream>
#include <thread>

namespace {

using analysis::motion_count;
using analysis::motion_feature_count;
using analysis::motion_hidden;
using analysis::MotionFeatures;
using analysis::MotionWeights;

struct Example {
    std::size_t motion = 0;
    MotionFeatures features{};
};

constexpr std::size_t known_features = 2;  // the last: what is known only where the meant note is

void make_features(const std::filesystem::path& place) {
    std::ofstream out(place);
    const sim::Workers workers{.threads = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()))};
    for (int part = 0; part < 10; ++part) {
        tests::StrokePlan plan{.presets = tests::design_presets(), .seed = 1, .of_each = 45};
        for (int scene = 0; scene < 100; ++scene) plan.scenes.push_back(100 * part + scene);
        for (const tests::RecordedStroke& stroke : recorded_strokes(plan, workers)) {
            const auto heard = tests::heard_note(stroke, true);
            if (!heard) continue;  // nothing is heard at the stroke's end: silent without asking
            out << static_cast<int>(stroke.motion);
            for (const double value : heard->features) out << "," << value;
            out << "\n";
        }
    }
}

std::vector<Example> read_features(const std::filesystem::path& place) {
    std::vector<Example> examples;
    std::ifstream in(place);
    for (std::string line; std::getline(in, line);) {
        std::istringstream cells(line);
        Example example;
        char comma = ',';
        cells >> example.motion;
        for (double& value : example.features) cells >> comma >> value;
        examples.push_back(example);
    }
    return examples;
}

void standardise(const std::vector<Example>& examples, MotionWeights& weights) {
    const double count = static_cast<double>(examples.size());
    for (std::size_t i = 0; i < motion_feature_count; ++i) {
        double sum = 0.0;
        double squares = 0.0;
        for (const Example& example : examples) {
            sum += example.features[i] / count;
            squares += example.features[i] * example.features[i] / count;
        }
        weights.mean[i] = sum;
        weights.spread[i] = std::sqrt(std::max(0.0, squares - sum * sum)) + 1e-3;
    }
}

/// Adam (form from memory): every weight steps by its running mean slope over the root of its mean square.
class Fit {
public:
    Fit(std::vector<Example> examples, std::uint32_t seed) : examples_(std::move(examples)), engine_(seed) {
        standardise(examples_, weights);
        for (auto& row : weights.hidden)
            for (double& w : row) w = normal_(engine_) / std::sqrt(static_cast<double>(motion_feature_count));
        for (auto& row : weights.out)
            for (double& w : row) w = normal_(engine_) / std::sqrt(static_cast<double>(motion_hidden));
        for (const Example& example : examples_) counts_[example.motion] += 1.0;
    }

    void epoch(double rate) {
        std::ranges::shuffle(examples_, engine_);
        constexpr std::size_t batch = 64;
        for (std::size_t from = 0; from < examples_.size(); from += batch) {
            MotionWeights slope;
            const std::size_t to = std::min(examples_.size(), from + batch);
            for (std::size_t i = from; i < to; ++i)
                add_slope(examples_[i], 1.0 / static_cast<double>(to - from), slope);
            ++steps_;
            for (std::size_t h = 0; h < motion_hidden; ++h) {
                for (std::size_t i = 0; i < motion_feature_count; ++i)
                    step(weights.hidden[h][i], slope.hidden[h][i] + decay * weights.hidden[h][i], mean_.hidden[h][i],
                         square_.hidden[h][i], rate);
                step(weights.hidden_bias[h], slope.hidden_bias[h], mean_.hidden_bias[h], square_.hidden_bias[h], rate);
                for (std::size_t m = 0; m < motion_count; ++m)
                    step(weights.out[m][h], slope.out[m][h] + decay * weights.out[m][h], mean_.out[m][h],
                         square_.out[m][h], rate);
            }
            for (std::size_t m = 0; m < motion_count; ++m)
                step(weights.out_bias[m], slope.out_bias[m], mean_.out_bias[m], square_.out_bias[m], rate);
        }
    }

    MotionWeights weights;

private:
    static constexpr double decay = 2e-3;
    static constexpr double blur = 0.15;  // of a feature's spread: noise that keeps the fit from learning by heart

    void add_slope(const Example& example, double weight, MotionWeights& slope) {
        const bool known = normal_(engine_) > 0.0;  // the meant note is known half of the time
        std::array<double, motion_feature_count> x{};
        for (std::size_t i = 0; i < x.size(); ++i) {
            const double value = known || i < x.size() - known_features ? example.features[i] : 0.0;
            x[i] = std::clamp((value - weights.mean[i]) / weights.spread[i], -4.0, 4.0) + blur * normal_(engine_);
        }
        std::array<double, motion_hidden> units{};
        for (std::size_t h = 0; h < motion_hidden; ++h) {
            units[h] = weights.hidden_bias[h];
            for (std::size_t i = 0; i < x.size(); ++i) units[h] += weights.hidden[h][i] * x[i];
            units[h] = std::tanh(units[h]);
        }
        std::array<double, motion_count> shares{};
        double sum = 0.0;
        for (std::size_t m = 0; m < motion_count; ++m) {
            shares[m] = weights.out_bias[m];
            for (std::size_t h = 0; h < motion_hidden; ++h) shares[m] += weights.out[m][h] * units[h];
            sum += shares[m] = std::exp(shares[m]);
        }
        // Rare motions weigh more, though not as much more as they are rare.
        weight *= std::pow(static_cast<double>(examples_.size()) / (motion_count * counts_[example.motion]), 0.7);
        for (std::size_t m = 0; m < motion_count; ++m) {
            const double error = weight * (shares[m] / sum - (m == example.motion ? 1.0 : 0.0));
            slope.out_bias[m] += error;
            for (std::size_t h = 0; h < motion_hidden; ++h) {
                slope.out[m][h] += error * units[h];
                const double back = error * weights.out[m][h] * (1.0 - units[h] * units[h]);
                slope.hidden_bias[h] += back;
                for (std::size_t i = 0; i < x.size(); ++i) slope.hidden[h][i] += back * x[i];
            }
        }
    }

    void step(double& value, double slope, double& mean, double& square, double rate) const {
        mean = 0.9 * mean + 0.1 * slope;
        square = 0.999 * square + 0.001 * slope * slope;
        value -= rate * (mean / (1.0 - std::pow(0.9, steps_))) /
                 (std::sqrt(square / (1.0 - std::pow(0.999, steps_))) + 1e-8);
    }

    std::vector<Example> examples_;
    std::mt19937 engine_;
    std::normal_distribution<double> normal_;
    std::array<double, motion_count> counts_{};
    MotionWeights mean_{};
    MotionWeights square_{};
    int steps_ = 0;
};

template <std::size_t N>
void put(std::ostream& out, const std::array<double, N>& values) {
    out << "{";
    char text[32];
    for (std::size_t i = 0; i < N; ++i) {
        std::snprintf(text, sizeof text, "%.4g", values[i]);
        out << (i > 0 ? "," : "") << text;
    }
    out << "}";
}

template <class Rows>
void put_rows(std::ostream& out, const Rows& rows) {
    out << "{{";
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i > 0) out << ",";
        put(out, rows[i]);
    }
    out << "}}";
}

void write(const std::filesystem::path& place, const MotionWeights& weights) {
    std::ofstream out(place);
    out << "// SPDX-License-Identifier: GPL-3.0-or-later\n// long: one table, made by tests/motion/design.cpp\n"
           "#include \"analysis/motion_weights.hpp\"\n\nnamespace analysis {\n\nconst MotionWeights "
           "motion_weights{\n.mean=";
    put(out, weights.mean);
    out << ",.spread=";
    put(out, weights.spread);
    out << ",.hidden=";
    put_rows(out, weights.hidden);
    out << ",.hidden_bias=";
    put(out, weights.hidden_bias);
    out << ",.out=";
    put_rows(out, weights.out);
    out << ",.out_bias=";
    put(out, weights.out_bias);
    out << "};\n\n}  // namespace analysis\n";
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 3) {
        std::cerr << "motion_design FEATURES.csv WEIGHTS.cpp\n";
        return 2;
    }
    if (!std::filesystem::exists(argv[1])) make_features(argv[1]);
    constexpr int epochs = 300;
    Fit fit(read_features(argv[1]), 1);
    for (int e = 0; e < epochs; ++e) fit.epoch(e < epochs * 7 / 10 ? 3e-3 : 6e-4);
    write(argv[2], fit.weights);
    return 0;
}
