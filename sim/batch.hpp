// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <exception>
#include <functional>
#include <optional>
#include <stop_token>
#include <string_view>

namespace sim {

/// What advances the strokes: the vector kernel, 16 strokes of one contact point at a time in single precision, or the
/// plain double reference, one at a time, that judges it.
enum class Kernel { lanes, reference };
/// As in options and run records.
std::string_view kernel_name(Kernel kernel);
std::optional<Kernel> kernel_from_name(std::string_view name);

/// Who does the work, and who is told how it goes.
struct Workers {
    int threads = 1;                             ///< >= 1
    std::function<void(double share)> progress;  ///< called now and then, from any one thread at a time; may be empty
    Kernel kernel = Kernel::lanes;
    std::stop_token stop;  ///< asked often; then the work ends with Stopped
};

/// The work was stopped from outside.
struct Stopped : std::exception {
    const char* what() const noexcept override { return "stopped"; }
};

/// Calls job(i) for i = 0 … count-1, shared over the threads; job i must write only what belongs to i, so that results
/// don't depend on the number of threads.  An exception in a job is thrown again here after all threads have stopped.
void for_each_job(int count, const Workers& workers, const std::function<void(int)>& job);

/// A part of a longer work: its progress 0…1 is told as from…to of the whole.
struct Part {
    double from;
    double to;
};
Workers part_of(const Workers& workers, Part part);

/// The same kernel and stop, for work inside a job: one thread, no progress of its own.
Workers alone(const Workers& workers);

}  // namespace sim
