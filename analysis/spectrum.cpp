// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/spectrum.hpp"

#include <fftw3.h>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <complex>
#include <memory>
#include <mutex>
#include <numbers>

namespace analysis {
namespace {

/// FFTW may execute in many threads at once but plan and destroy only in one.
std::mutex& planner_mutex() {
    static std::mutex mutex;
    return mutex;
}

/// Both transforms of one length, with the buffers they were planned for: alignment is part of a plan, so owning the
/// buffers keeps the arithmetic the same whoever calls.
class Transform {
public:
    explicit Transform(std::size_t length)
        : length_(length), samples_(fftw_alloc_real(length)), bins_(fftw_alloc_complex(length / 2 + 1)) {
        assert(samples_ && bins_);
    }
    ~Transform() {
        const std::lock_guard lock(planner_mutex());
        if (forward_) fftw_destroy_plan(forward_);
        if (backward_) fftw_destroy_plan(backward_);
        fftw_free(samples_);
        fftw_free(bins_);
    }
    Transform(const Transform&) = delete;
    Transform& operator=(const Transform&) = delete;

    std::size_t length() const { return length_; }
    double* samples() { return samples_; }
    fftw_complex* bins() { return bins_; }
    /// Both take what lies in one buffer to the other.  Planned when first asked for, which an estimate does without
    /// touching the buffers: many lengths are needed one way only, and plans are dear.
    void forward() {
        if (!forward_)
            forward_ = planned([this](int size) { return fftw_plan_dft_r2c_1d(size, samples_, bins_, flags); });
        fftw_execute(forward_);
    }
    void backward() {
        if (!backward_)
            backward_ = planned([this](int size) { return fftw_plan_dft_c2r_1d(size, bins_, samples_, flags); });
        fftw_execute(backward_);
    }

private:
    static constexpr unsigned flags = FFTW_ESTIMATE;

    template <typename Make>
    fftw_plan planned(const Make& make) {
        const std::lock_guard lock(planner_mutex());
        // Without this a plan could depend on which lengths were planned before.
        fftw_forget_wisdom();
        const fftw_plan plan = make(static_cast<int>(length_));
        assert(plan);
        return plan;
    }

    std::size_t length_;
    double* samples_;
    fftw_complex* bins_;
    fftw_plan forward_ = nullptr;
    fftw_plan backward_ = nullptr;
};

/// This thread's transform of a length; the one used longest ago goes when there are too many.
Transform& transform_of(std::size_t length) {
    constexpr std::size_t kept = 40;               // as many as common_length gives from 2^7 to 2^20
    constexpr std::size_t most_samples = 1 << 21;  // in all of them: 32 MB
    thread_local std::vector<std::unique_ptr<Transform>> transforms;
    const auto has_length = [&](const auto& transform) { return transform->length() == length; };
    const auto found = std::find_if(transforms.begin(), transforms.end(), has_length);
    if (found == transforms.end()) {
        std::size_t samples = length;
        for (const auto& transform : transforms) samples += transform->length();
        while (!transforms.empty() && (transforms.size() >= kept || samples > most_samples)) {
            samples -= transforms.front()->length();
            transforms.erase(transforms.begin());
        }
        transforms.push_back(std::make_unique<Transform>(length));
    } else {
        std::rotate(found, found + 1, transforms.end());
    }
    return *transforms.back();
}

void load(Transform& transform, std::span<const double> samples) {
    assert(samples.size() <= transform.length());
    std::copy(samples.begin(), samples.end(), transform.samples());
    std::fill(transform.samples() + samples.size(), transform.samples() + transform.length(), 0.0);
}

bool is_fast(std::size_t length) {
    for (const unsigned prime : {2U, 3U, 5U})
        while (length % prime == 0) length /= prime;
    return length == 1;
}

}  // namespace

std::size_t fast_length(std::size_t at_least) {
    std::size_t length = std::max<std::size_t>(2, at_least + at_least % 2);
    while (!is_fast(length)) length += 2;
    return length;
}

std::size_t fast_length_within(std::size_t at_most) {
    assert(at_most >= 2);
    std::size_t length = at_most - at_most % 2;
    while (!is_fast(length)) length -= 2;
    return length;
}

std::size_t common_length(std::size_t at_least) {
    std::size_t power = 64;
    while (2 * power < at_least) power *= 2;
    for (const std::size_t length : {power, power / 4 * 5, power / 2 * 3})
        if (length >= at_least) return length;
    return 2 * power;
}

std::vector<std::complex<double>> spectrum(std::span<const double> samples, std::size_t length) {
    assert(length >= 2 && length % 2 == 0);
    Transform& transform = transform_of(length);
    load(transform, samples);
    transform.forward();
    std::vector<std::complex<double>> bins(length / 2 + 1);
    for (std::size_t k = 0; k < bins.size(); ++k) bins[k] = {transform.bins()[k][0], transform.bins()[k][1]};
    return bins;
}

std::vector<double> inverse_spectrum(std::span<const std::complex<double>> bins, std::size_t length) {
    assert(length >= 2 && length % 2 == 0 && bins.size() == length / 2 + 1);
    Transform& transform = transform_of(length);
    for (std::size_t k = 0; k < bins.size(); ++k) {
        transform.bins()[k][0] = bins[k].real();
        transform.bins()[k][1] = bins[k].imag();
    }
    transform.backward();
    std::vector<double> samples(transform.samples(), transform.samples() + length);
    for (double& sample : samples) sample /= static_cast<double>(length);
    return samples;
}

std::vector<double> autocorrelation(std::span<const double> samples, std::size_t max_lag) {
    assert(max_lag < samples.size());
    // Zeros behind the record, so that its end does not wrap round to its start.
    const std::size_t length = common_length(samples.size() + max_lag);
    Transform& transform = transform_of(length);
    load(transform, samples);
    transform.forward();
    fftw_complex* bins = transform.bins();
    for (std::size_t k = 0; k <= length / 2; ++k) {
        bins[k][0] = bins[k][0] * bins[k][0] + bins[k][1] * bins[k][1];
        bins[k][1] = 0.0;
    }
    transform.backward();
    std::vector<double> result(transform.samples(), transform.samples() + max_lag + 1);
    for (double& value : result) value /= static_cast<double>(length);
    return result;
}

std::vector<double> hann_window(double length) {
    std::vector<double> window(static_cast<std::size_t>(std::ceil(length)));
    // A turning phasor, set right now and then: a cosine each would cost as much as what windows are used for.
    constexpr std::size_t set_right = 256;
    const double angle = 2.0 * std::numbers::pi / length;
    const std::complex<double> step = std::polar(1.0, angle);
    std::complex<double> phasor = 1.0;
    for (std::size_t j = 0; j < window.size(); ++j) {
        if (j % set_right == 0) phasor = std::polar(1.0, angle * static_cast<double>(j));
        window[j] = 0.5 - 0.5 * phasor.real();
        phasor = {phasor.real() * step.real() - phasor.imag() * step.imag(),
                  phasor.real() * step.imag() + phasor.imag() * step.real()};
    }
    return window;
}

}  // namespace analysis
