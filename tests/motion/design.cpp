// SPDX-License-Identifier: GPL-3.0-or-later
// motion_design FOLDER WEIGHTS.txt: fits the networks that name motions by ear (analysis/motion_weights.txt).
//
// FOLDER keeps the examples, three parts of them; those that are there already are not made again.
#include "tests/motion/fit.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <exception>
#include <fstream>
#include <thread>

namespace {

using tests::Example;

constexpr int parts = 3;

std::vector<Example> examples_in(const std::filesystem::path& folder) {
    const sim::Workers workers{.threads = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()))};
    std::filesystem::create_directories(folder);
    std::vector<Example> examples;
    for (int part = 1; part <= parts; ++part) {
        const std::filesystem::path place = folder / ("d" + std::to_string(part) + ".ex");
        if (!std::filesystem::exists(place)) {
            const std::uint32_t seed = 100U + static_cast<std::uint32_t>(part);
            tests::write_examples(
                place, tests::make_examples(
                           {.seed = seed, .player_scenes = 300, .far_scenes = 150, .light_scenes = 500}, workers));
        }
        std::vector<Example> more = tests::read_examples(place);
        for (Example& example : more) example.scene = example.scene * parts + part - 1;
        examples.insert(examples.end(), more.begin(), more.end());
        std::printf("%s: %zu examples\n", place.c_str(), more.size());
    }
    return examples;
}

/// How often each motion is taken for which, by networks that have not seen the scene.
void tell(const std::vector<Example>& examples, const analysis::MotionModel& model, bool known) {
    std::array<std::array<int, analysis::motion_count>, analysis::motion_count> counts{};
    for (const Example& example : examples) {
        if (example.known != known) continue;
        analysis::MotionModel unaware = model;
        const auto held_out = static_cast<std::size_t>(tests::fold_of(example));
        if (held_out >= model.networks.size()) continue;
        unaware.networks = {model.networks[held_out]};
        const auto shares = shares_of(unaware, example.features);
        ++counts[static_cast<std::size_t>(example.motion)]
                [static_cast<std::size_t>(std::ranges::max_element(shares) - shares.begin())];
    }
    std::printf("held out, note %s: is (rows), taken for (columns)\n", known ? "known" : "not known");
    for (std::size_t m = 0; m < counts.size(); ++m) {
        std::printf("%14s", std::string(heard_motion_name(static_cast<analysis::HeardMotion>(m))).c_str());
        for (const int count : counts[m]) std::printf(" %5d", count);
        std::printf("\n");
    }
}

}  // namespace

int main(int argc, char** argv) try {
    if (argc != 3) {
        std::fprintf(stderr, "motion_design FOLDER WEIGHTS.txt\n");
        return 2;
    }
    const std::vector<Example> examples = examples_in(argv[1]);
    const analysis::MotionModel model = tests::fit_motions(examples, {.tells = true});
    for (const bool known : {false, true}) tell(examples, model, known);
    std::ofstream out(argv[2]);
    out << motion_model_text(model, "Written by motion_design (tests/motion/design.cpp), not by hand.");
    return out.flush() ? 0 : 1;
} catch (const std::exception& error) {
    std::fprintf(stderr, "motion_design: %s\n", error.what());
    return 1;
}
