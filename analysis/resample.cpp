// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/resample.hpp"

#include <samplerate.h>
#include <cassert>
#include <cmath>
#include <vector>

namespace analysis {

Signal resample(const Signal& signal, double to_rate) {
    assert(signal.sample_rate > 0.0 && to_rate > 0.0);
    if (to_rate == signal.sample_rate || signal.samples.empty()) return {signal.samples, to_rate};
    const double ratio = to_rate / signal.sample_rate;
    const auto wanted = static_cast<std::size_t>(std::llround(static_cast<double>(signal.samples.size()) * ratio));
    std::vector<float> in(signal.samples.begin(), signal.samples.end());
    std::vector<float> out(wanted + 64);

    SRC_DATA data{};
    data.data_in = in.data();
    data.input_frames = static_cast<long>(in.size());
    data.data_out = out.data();
    data.output_frames = static_cast<long>(out.size());
    data.src_ratio = ratio;
    const int error = src_simple(&data, SRC_SINC_BEST_QUALITY, 1);
    assert(error == 0);
    static_cast<void>(error);

    // The library may stop a sample early; what is missing is the faded end of its filter.
    out.resize(static_cast<std::size_t>(data.output_frames_gen));
    out.resize(wanted, 0.0F);
    return {{out.begin(), out.end()}, to_rate};
}

}  // namespace analysis
