// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/analysis/temporary_folder.hpp"

#include <nlohmann/json.hpp>

#include <sys/types.h>
#include <string>
#include <vector>

namespace tests {

/// How a page is looked at.
struct Screen {
    int width = 1280;  ///< CSS px
    int height = 900;
    bool phone = false;
    bool dark = false;
};

/// Paper in inches, as the browser's protocol has it.
struct Paper {
    double width = 8.27;  ///< A4
    double height = 11.69;
};

/// Chromium without a window, spoken to over two pipes.  A call that fails or takes more than a minute throws.
class Browser {
public:
    Browser();
    ~Browser();
    Browser(const Browser&) = delete;
    Browser& operator=(const Browser&) = delete;

    /// Loads a local file and waits for it.
    void open(const std::filesystem::path& file, const Screen& screen = {});
    /// The value of a JavaScript expression, a promise's once it is kept.  The page's own policy does not bind it.
    nlohmann::json value_of(const std::string& expression);
    /// The whole page as PNG.
    std::string picture();
    std::string pdf(const Paper& paper);
    /// Addresses the page has asked for since it was opened, each cut after 60 characters.
    std::vector<std::string> requests() const;
    /// What the browser complained of: its log and the page's.
    std::vector<std::string> complaints() const;

private:
    nlohmann::json call(const std::string& method, nlohmann::json parameters = nlohmann::json::object());
    nlohmann::json next_message();
    void wait_for(const std::string& event);

    TemporaryFolder folder_;
    pid_t process_ = -1;
    int to_browser_ = -1;
    int from_browser_ = -1;
    int number_ = 0;
    std::string session_;
    std::string unread_;
    std::vector<nlohmann::json> events_;
};

/// Bytes of base64.
std::string from_base64(const std::string& text);

}  // namespace tests
