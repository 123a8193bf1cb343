// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/external/browser.hpp"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>
#include <array>
#include <stdexcept>

namespace tests {
namespace {

using nlohmann::json;

constexpr int patience_ms = 60'000;

/// Runs in the child: the browser reads its orders from 3 and answers on 4.
[[noreturn]] void become_browser(int orders, int answers, const std::string& folder) {
    // out of the way of 3 and 4 first
    const int from = ::fcntl(orders, F_DUPFD, 10);
    const int to = ::fcntl(answers, F_DUPFD, 10);
    ::dup2(from, 3);
    ::dup2(to, 4);
    const int nowhere = ::open("/dev/null", O_RDWR);
    for (const int stream : {0, 1, 2}) ::dup2(nowhere, stream);
    const std::string data = "--user-data-dir=" + folder;
    ::execlp("chromium", "chromium", "--headless=new", "--no-sandbox", "--disable-gpu", "--remote-debugging-pipe",
             "--autoplay-policy=no-user-gesture-required", "--disable-background-networking", "--no-first-run",
             "--mute-audio", data.c_str(), static_cast<char*>(nullptr));
    ::_exit(127);
}

}  // namespace

Browser::Browser() {
    std::array<int, 2> orders{};
    std::array<int, 2> answers{};
    if (::pipe2(orders.data(), O_CLOEXEC) != 0 || ::pipe2(answers.data(), O_CLOEXEC) != 0)
        throw std::runtime_error("no pipe to the browser");
    process_ = ::fork();
    if (process_ == 0) become_browser(orders[0], answers[1], folder_.path().string());
    ::close(orders[0]);
    ::close(answers[1]);
    to_browser_ = orders[1];
    from_browser_ = answers[0];
    const json target = call("Target.createTarget", {{"url", "about:blank"}});
    session_ = call("Target.attachToTarget", {{"targetId", target.at("targetId")}, {"flatten", true}}).at("sessionId");
    for (const char* domain : {"Page", "Network", "Runtime", "Log"}) call(std::string(domain) + ".enable");
}

Browser::~Browser() {
    ::close(to_browser_);  // ends it
    ::close(from_browser_);
    for (int waited = 0; waited < 50 && ::waitpid(process_, nullptr, WNOHANG) == 0; ++waited) ::usleep(100'000);
    if (::kill(process_, 0) == 0 && ::kill(process_, SIGKILL) == 0) ::waitpid(process_, nullptr, 0);
}

json Browser::next_message() {
    while (true) {
        if (const std::size_t end = unread_.find('\0'); end != std::string::npos) {
            json message = json::parse(unread_.substr(0, end));
            unread_.erase(0, end + 1);
            return message;
        }
        pollfd ready{from_browser_, POLLIN, 0};
        std::array<char, 65536> part{};
        const ssize_t count = ::poll(&ready, 1, patience_ms) == 1 ? ::read(from_browser_, part.data(), part.size()) : 0;
        if (count <= 0) throw std::runtime_error("the browser says nothing");
        unread_.append(part.data(), static_cast<std::size_t>(count));
    }
}

json Browser::call(const std::string& method, json parameters) {
    json order{{"id", ++number_}, {"method", method}, {"params", std::move(parameters)}};
    if (!session_.empty()) order["sessionId"] = session_;
    std::string text = order.dump();
    text += '\0';
    for (std::size_t done = 0; done < text.size();) {
        const ssize_t count = ::write(to_browser_, text.data() + done, text.size() - done);
        if (count <= 0) throw std::runtime_error("the browser has gone");
        done += static_cast<std::size_t>(count);
    }
    while (true) {
        json message = next_message();
        if (message.value("id", 0) != number_) {
            events_.push_back(std::move(message));
        } else if (message.contains("error")) {
            throw std::runtime_error(method + ": " + message["error"].dump());
        } else {
            return message.at("result");
        }
    }
}

void Browser::wait_for(const std::string& event) {
    for (std::size_t i = 0;; ++i) {
        while (i >= events_.size()) events_.push_back(next_message());
        if (events_[i].value("method", "") == event) return;
    }
}

void Browser::open(const std::filesystem::path& file, const Screen& screen) {
    call("Emulation.setDeviceMetricsOverride", {{"width", screen.width},
                                                {"height", screen.height},
                                                {"deviceScaleFactor", screen.phone ? 2 : 1},
                                                {"mobile", screen.phone}});
    call("Emulation.setEmulatedMedia",
         {{"features", json::array({{{"name", "prefers-color-scheme"}, {"value", screen.dark ? "dark" : "light"}}})}});
    events_.clear();
    call("Page.navigate", {{"url", "file://" + file.string()}});
    wait_for("Page.loadEventFired");
}

json Browser::value_of(const std::string& expression) {
    const json answer =
        call("Runtime.evaluate",
             {{"expression", expression}, {"awaitPromise", true}, {"returnByValue", true}, {"userGesture", true}});
    if (answer.contains("exceptionDetails")) throw std::runtime_error(answer["exceptionDetails"].dump());
    return answer.at("result").value("value", json());
}

std::string Browser::picture() {
    return from_base64(call("Page.captureScreenshot", {{"captureBeyondViewport", true}}).at("data"));
}

std::string Browser::pdf(const Paper& paper) {
    return from_base64(call("Page.printToPDF", {{"paperWidth", paper.width},
                                                {"paperHeight", paper.height},
                                                {"printBackground", false},
                                                {"preferCSSPageSize", false}})
                           .at("data"));
}

std::vector<std::string> Browser::requests() const {
    std::vector<std::string> found;
    for (const json& event : events_)
        if (event.value("method", "") == "Network.requestWillBeSent")
            found.push_back(event["params"]["request"]["url"].get<std::string>().substr(0, 60));
    return found;
}

std::vector<std::string> Browser::complaints() const {
    std::vector<std::string> found;
    for (const json& event : events_) {
        const std::string method = event.value("method", "");
        if (method == "Log.entryAdded" || method == "Runtime.exceptionThrown" || method == "Runtime.consoleAPICalled")
            found.push_back(event["params"].dump().substr(0, 300));
    }
    return found;
}

std::string from_base64(const std::string& text) {
    static const std::string digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string bytes;
    unsigned int held = 0;
    int bits = 0;
    for (const char c : text) {
        const std::size_t digit = digits.find(c);
        if (digit == std::string::npos) break;
        held = (held << 6U) | static_cast<unsigned int>(digit);
        bits += 6;
        if (bits < 8) continue;
        bits -= 8;
        bytes += static_cast<char>((held >> static_cast<unsigned int>(bits)) & 0xFFU);
    }
    return bytes;
}

}  // namespace tests
