// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/html.hpp"

#include <algorithm>
#include <cstdint>

namespace sim::report {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";  // U+FFFD

std::string_view entity(char c) {
    switch (c) {
        case '&':
            return "&amp;";
        case '<':
            return "&lt;";
        case '>':
            return "&gt;";
        case '"':
            return "&quot;";
        case '\'':
            return "&#39;";
        default:
            return {};
    }
}

/// The document's words as valid UTF-8: what is not is replaced.
std::string valid_utf8(std::string_view text) {
    const std::string quoted = Json(text).dump(-1, ' ', false, Json::error_handler_t::replace);
    return Json::parse(quoted).get<std::string>();
}

std::string start_of(std::string_view name, const Attributes& attributes) {
    std::string tag = "<" + std::string(name);
    for (const auto& [key, value] : attributes) tag += " " + std::string(key) + "=\"" + escaped(value) + "\"";
    return tag;
}

std::string row_element(const std::vector<std::string>& cells) {
    std::string row;
    for (std::size_t i = 0; i < cells.size(); ++i)
        row += i == 0 ? text_element("th", cells[i], {{"scope", "row"}}) : text_element("td", cells[i]);
    return element("tr", row) + "\n";
}

}  // namespace

std::string escaped(std::string_view text) {
    std::string result;
    for (const char c : valid_utf8(text)) {
        const std::string_view instead = entity(c);
        const auto code = static_cast<unsigned char>(c);
        if (!instead.empty())
            result += instead;
        else if ((code < 0x20 && c != '\n' && c != '\t') || code == 0x7f)
            result += replacement;
        else
            result += c;
    }
    return result;
}

std::string element(std::string_view name, const std::string& inside, const Attributes& attributes) {
    return start_of(name, attributes) + ">" + inside + "</" + std::string(name) + ">";
}

std::string text_element(std::string_view name, std::string_view text, const Attributes& attributes) {
    return element(name, escaped(text), attributes);
}

std::string empty_element(std::string_view name, const Attributes& attributes) {
    return start_of(name, attributes) + "/>";
}

std::string data_uri(std::string_view media_type, std::string_view bytes) {
    constexpr std::string_view digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string uri = "data:" + std::string(media_type) + ";base64,";
    uri.reserve(uri.size() + 4 * (bytes.size() / 3 + 1));
    for (std::size_t i = 0; i < bytes.size(); i += 3) {
        const auto byte = [&](std::size_t k) {
            return k < bytes.size() ? static_cast<std::uint32_t>(static_cast<unsigned char>(bytes[k])) : 0U;
        };
        const std::uint32_t three = byte(i) << 16U | byte(i + 1) << 8U | byte(i + 2);
        const std::size_t real = std::min<std::size_t>(3, bytes.size() - i) + 1;
        for (std::size_t k = 0; k < 4; ++k) uri += k < real ? digits[(three >> (18U - 6U * k)) & 63U] : '=';
    }
    return uri;
}

std::string script_json(const Json& document) {
    std::string text;
    for (const char c : document.dump(1, ' ', false, Json::error_handler_t::replace)) {
        if (c == '<')
            text += "\\u003c";
        else if (c == '>')
            text += "\\u003e";
        else if (c == '&')
            text += "\\u0026";
        else
            text += c;
    }
    return text;
}

std::string table_element(const PageTable& table) {
    std::string head;
    for (const std::string& column : table.columns) head += text_element("th", column, {{"scope", "col"}});
    std::string body;
    for (const std::vector<std::string>& row : table.rows) body += row_element(row);
    const std::string inside = "\n" + text_element("caption", table.caption) + "\n" +
                               element("thead", element("tr", head)) + "\n" + element("tbody", "\n" + body) + "\n";
    const Attributes looks = table.look.empty() ? Attributes{} : Attributes{{"class", table.look}};
    return element("div", element("table", inside, looks),
                   {{"class", "wide"}, {"tabindex", "0"}, {"role", "region"}, {"aria-label", table.caption}}) +
           "\n";
}

}  // namespace sim::report
