// links: say_engine say_fixtures
// The plain-words table: every row that is used is found in a sentence and its swap is what the
// table says. Source of the rows: US federal plain language guidelines, public domain (named in the
// table).
#include "support/catch.h"
#include "support/fixture.h"
#include "text/edit.h"

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

using namespace say;
using namespace say::test;

namespace {

struct Row {
    std::string written;
    std::string swap; // the first of them
    std::string heard;
    std::string form;
};

std::vector<std::string> cells(const std::string& line) {
    std::vector<std::string> result;
    std::stringstream stream(line);
    std::string cell;
    while (std::getline(stream, cell, '\t'))
        result.push_back(cell);
    return result;
}

std::vector<Row> table() {
    std::ifstream file(std::string(SAYLINE_SOURCE_DIR) + "/server/rules/data/plain_words.tsv");
    std::vector<Row> rows;
    std::string line;
    while (std::getline(file, line)) {
        const auto row = cells(line);
        if (line.starts_with('#') || row.size() < 4) continue;
        rows.push_back({row[0], row[1].substr(0, row[1].find(',')), row[2], row[3]});
    }
    return rows;
}

Options only_wording() {
    Options options;
    options.stage = Stage::mark;
    for (const Rule* rule : all_rules()) {
        if (rule->id != "written-wording")
            options.rule_levels[std::string(rule->id)] = RuleLevel::off;
    }
    return options;
}

// The sentence with the finding's first fix taken, or nothing if there is none.
std::string mended(const std::string& text, const Options& options) {
    const auto analysis = analyse_text(text, options);
    if (analysis->findings.empty()) return {};
    return say::apply(text, fixes_of(*analysis, analysis->findings.front()).front().edits);
}

} // namespace

TEST_CASE("plain words/every row that is used is found and swapped") {
    const Options options = only_wording();
    int used = 0;
    for (const Row& row : table()) {
        if (row.heard == "never") continue;
        ++used;
        INFO(row.written);
        // What only opens a sentence stands there; the rest follows a plain subject.
        const bool opens = row.form.find('o') != std::string::npos;
        const bool plural = row.form.find("np") != std::string::npos;
        const std::string written = plural ? row.written + "s" : row.written;
        std::string swap = row.swap.substr(0, row.swap.find('~'));
        if (plural) swap += "s";
        const std::string lead = opens ? "" : "they ";
        const bool leaves_out = swap == "(omit)";
        const std::string expected =
            lead + (leaves_out ? "" : swap + " ") + "then walk the shore.\n";
        CHECK(mended(lead + written + " then walk the shore.\n", options) == expected);
    }
    CHECK(used > 150);
}

// Forms by hand, from the grammar of English; the words are rows of the table.
TEST_CASE("plain words/endings and articles follow") {
    const Options options = only_wording();
    const std::vector<std::pair<std::string, std::string>> cases = {
        {"She utilizes it daily.\n", "She uses it daily.\n"},
        {"They are utilizing it.\n", "They are using it.\n"},
        {"It was terminated early.\n", "It was ended early.\n"},
        {"The count has commenced early.\n", "The count has started early.\n"},
        {"We complied with it all.\n", "We followed it all.\n"},
        {"They have accomplished it all.\n", "They have done it all.\n"},
        {"They accomplished it all.\n", "They did it all.\n"},
        {"We utilise the string.\n", "We use the string.\n"},
        {"Methodologies differ, they say.\n", "Methods differ, they say.\n"},
        {"It is an expeditious way.\n", "It is a quick way.\n"},
        {"Prior to six we wait.\n", "Before six we wait.\n"},
        {"It took a modification of it.\n", "It took a change of it.\n"},
    };
    for (const auto& [text, expected] : cases) {
        INFO(text);
        CHECK(mended(text, options) == expected);
    }
}

// The table names what it leaves alone; these are words that people say. Common practice, no
// source.
TEST_CASE("plain words/what people do say is left alone") {
    const Options options = only_wording();
    for (const char* text : {"However, it is a benefit.\n", "We identify the type.\n",
                             "There are some that remain.\n", "It contains a state of the art.\n",
                             "Provide the option.\n", "The subject is the sea.\n"}) {
        INFO(text);
        CHECK(analyse_text(text, options)->findings.empty());
    }
}
