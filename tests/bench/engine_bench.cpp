// What the engine costs by itself: parse, cold analysis, the thought's parts, a keystroke. Prints;
// judges nothing.
//
//     engine_bench [words]
//
// The text is drawn from the dictionary with a seed, so that no two thoughts are alike and the memo
// cannot help.
#include "engine/analysis.h"
#include "exporters/exporter.h"
#include "features/features.h"
#include "speech/lexicon_table.h"
#include "speech/settle.h"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

namespace {

using namespace say;
using Clock = std::chrono::steady_clock;

double since(Clock::time_point begin) {
    return std::chrono::duration<double, std::milli>(Clock::now() - begin).count();
}

std::vector<std::string> vocabulary() {
    std::vector<std::string> all;
    table::each_word([&](std::string_view word, const std::vector<Phones>&) {
        const bool plain =
            std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
        if (plain && word.size() > 2 && word.size() < 9) all.emplace_back(word);
    });
    std::mt19937 random(3);
    std::shuffle(all.begin(), all.end(), random);
    all.resize(std::min<std::size_t>(all.size(), 4000));
    return all;
}

std::string make_script(int words) {
    const std::vector<std::string> content = vocabulary();
    const std::vector<std::string> function = {"the", "a",   "of",   "to", "and", "in",
                                               "is",  "you", "that", "we", "it",  "for"};
    std::mt19937 random(7);
    std::string text = "---\ntitle: Bench\n---\n\n";
    for (int written = 0, thought = 0; written < words; ++thought) {
        if (thought % 40 == 0) text += fmt::format("# Part {}\n\n", thought / 40 + 1);
        const int size = 8 + static_cast<int>(random() % 12);
        for (int i = 0; i < size; ++i) {
            const bool plain = random() % 2 == 0;
            std::string word =
                plain ? function[random() % function.size()] : content[random() % content.size()];
            if (i == 0) word[0] = static_cast<char>(word[0] - 'a' + 'A');
            if (i > 2 && i + 2 < size && random() % 12 == 0) word += random() % 2 == 0 ? "," : " /";
            if (random() % 30 == 0) word = "*" + word + "*";
            text += word + (i + 1 < size ? " " : ".");
        }
        written += size;
        text += "\n\n";
    }
    return text;
}

Document document(const std::string& text) {
    return {"bench.say", 1, std::make_shared<const Text>(text)};
}

void parts(const std::string& text) {
    const Header header = parse_header(text);
    Clock::time_point begin = Clock::now();
    const std::vector<Block> blocks = cut_blocks(text, header);
    fmt::print("cut into blocks     {:8.2f} ms  {} blocks\n", since(begin), blocks.size());

    Parser parser;
    std::vector<std::pair<Block, Written>> thoughts;
    begin = Clock::now();
    for (const Block& block : blocks) {
        if (block.kind == BlockKind::paragraph)
            thoughts.emplace_back(block, parser.parse(text, block));
    }
    const double parse = since(begin);
    fmt::print("parse               {:8.2f} ms  {:.1f} MB/s\n", parse,
               static_cast<double>(text.size()) / parse / 1000);

    const Voice voice;
    std::size_t words = 0;
    begin = Clock::now();
    for (auto& [block, written] : thoughts) {
        settle(written);
        words += read(written, slice(text, block.span), voice).said.size();
    }
    const double reading = since(begin);
    fmt::print("read                {:8.2f} ms  {:.2f} µs a word\n", reading,
               1000 * reading / static_cast<double>(words));
}

void analysis(const std::string& text) {
    Parser parser;
    Memo memo;
    Clock::time_point begin = Clock::now();
    auto cold = analyse(document(text), Options{}, parser, memo, Cancel{});
    fmt::print("cold analysis       {:8.2f} ms  {} thoughts, {} findings\n", since(begin),
               cold->script.thoughts.size(), cold->findings.size());

    std::vector<double> keys;
    std::string typed = text;
    for (int key = 0; key < 200; ++key) {
        typed.insert(typed.size() / 2, "a");
        begin = Clock::now();
        const auto warm = analyse(document(typed), Options{}, parser, memo, Cancel{});
        keys.push_back(since(begin));
    }
    std::sort(keys.begin(), keys.end());
    fmt::print("a key, analysed     {:8.2f} ms p50  {:.2f} ms p99\n", keys[keys.size() / 2],
               keys[keys.size() * 99 / 100]);
}

// What a script costs in each form; a sound besides in seconds of sound a second.
void exports(const std::string& text) {
    Parser parser;
    Memo memo;
    const auto made = analyse(document(text), Options{}, parser, memo, Cancel{});
    for (const Exporter& exporter : exporters()) {
        std::size_t bytes = 0;
        const Clock::time_point begin = Clock::now();
        if (exporter.stream != nullptr) {
            exporter.stream(*made, {}, [&](std::string_view part, double /*done*/) {
                bytes += part.size();
                return true;
            });
        } else {
            bytes = exporter.write(*made, {}).size();
        }
        const double took = since(begin);
        fmt::print("export to {:9} {:8.2f} ms  {:.2f} MB", exporter.name, took,
                   static_cast<double>(bytes) / 1e6);
        if (exporter.stream != nullptr)
            fmt::print(", {:.0f} times as fast as it sounds",
                       made->script.timing.expected.count() / took * 1000);
        fmt::print("\n");
    }
}

} // namespace

int main(int count, char** arguments) {
    std::vector<int> sizes = {1000, 10000, 100000};
    if (count > 1) sizes = {std::atoi(arguments[1])};
    for (const int words : sizes) {
        const std::string text = make_script(words);
        fmt::print("--- {} words, {} bytes\n", words, text.size());
        parts(text);
        analysis(text);
        exports(text);
    }
    return 0;
}
