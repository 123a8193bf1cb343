// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/batch.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace sim {

std::string_view kernel_name(Kernel kernel) { return kernel == Kernel::lanes ? "lanes" : "reference"; }

std::optional<Kernel> kernel_from_name(std::string_view name) {
    for (const Kernel kernel : {Kernel::lanes, Kernel::reference})
        if (kernel_name(kernel) == name) return kernel;
    return std::nullopt;
}

void for_each_job(int count, const Workers& workers, const std::function<void(int)>& job) {
    std::atomic<int> next{0};
    std::mutex told;  // guards done, first_error and the progress callback
    int done = 0;
    std::exception_ptr first_error;
    const auto work = [&] {
        for (int i = next++; i < count; i = next++) {
            try {
                if (workers.stop.stop_requested()) throw Stopped();
                job(i);
            } catch (...) {
                const std::scoped_lock lock(told);
                if (!first_error) first_error = std::current_exception();
                next = count;
            }
            const std::scoped_lock lock(told);
            ++done;
            if (workers.progress) workers.progress(static_cast<double>(done) / count);
        }
    };
    {
        std::vector<std::jthread> helpers;
        for (int i = 1; i < std::min(workers.threads, count); ++i) helpers.emplace_back(work);
        work();
    }
    if (first_error) std::rethrow_exception(first_error);
}

Workers part_of(const Workers& workers, Part part) {
    Workers some = workers;
    if (workers.progress)
        some.progress = [tell = workers.progress, part](double share) {
            tell(part.from + (part.to - part.from) * share);
        };
    return some;
}

Workers alone(const Workers& workers) {
    Workers one = workers;
    one.threads = 1;
    one.progress = {};
    return one;
}

}  // namespace sim
