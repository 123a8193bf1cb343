// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/report/json_values.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Only for the sources of this folder: pieces of a page that is HTML and well-formed XML at once.
namespace sim::report {

/// Text as it may stand between tags and inside quoted attributes: & < > " ' as entities.  Control characters, which
/// XML does not allow, and bytes that are no UTF-8 become U+FFFD.
std::string escaped(std::string_view text);

using Attributes = std::vector<std::pair<std::string_view, std::string>>;
/// <name a="…">inside</name>.  Attribute values are escaped here, `inside` is taken as it is.
std::string element(std::string_view name, const std::string& inside, const Attributes& attributes = {});
/// As above from plain text, which is escaped.
std::string text_element(std::string_view name, std::string_view text, const Attributes& attributes = {});
/// <name a="…"/>
std::string empty_element(std::string_view name, const Attributes& attributes = {});

/// "data:audio/flac;base64,…"
std::string data_uri(std::string_view media_type, std::string_view bytes);

/// JSON for a <script>: neither < nor & nor > in it, so that HTML and XML read the same.
std::string script_json(const Json& document);

/// A table for a page: words in columns, a line each row, a caption.  The first column heads its rows.
struct PageTable {
    std::string caption;
    std::vector<std::string> columns;  ///< what, with its unit
    std::vector<std::vector<std::string>> rows;
    std::string look = {};  ///< a class of the page's style
};
/// In a box of its own, which scrolls where the table is wider than the page.
std::string table_element(const PageTable& table);

}  // namespace sim::report
