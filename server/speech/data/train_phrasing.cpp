// Learns the phrasing model and writes phrasing.bin: the same labels give the same bytes.
//
//   zcat labels.tsv.gz | train_phrasing phrasing.bin    learns from all of it
//   zcat labels.tsv.gz | train_phrasing --folds         judges it: each reader of set `dev` by a
//                                                       model that never heard them
//
// A line is a word with its soft targets (set `train`) or its labels (set `dev`), a line that
// begins with # a sentence; docs/phrasing.md says where the labels come from and what they are.
#include "speech/lexicon.h"
#include "speech/phrasing.h"
#include "speech/phrasing_table.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace {

using namespace say;

constexpr float rate = 0.02F;
constexpr int passes = 5;
constexpr int fold_count = 4;
constexpr float unknown = -1.0F;

using Outputs = std::array<float, phrasing_outputs>;

struct Word {
    std::string text;
    std::string after;
    Outputs target{unknown, unknown, unknown, unknown};
    bool judged = false; // its juncture has both labels
};

struct Sentence {
    bool labelled = false; // set `dev`
    std::string reader;
    std::vector<Word> words;
    std::vector<PhrasingRows> rows;
};

std::vector<std::string> fields_of(const std::string& line) {
    std::vector<std::string> fields;
    std::size_t begin = 0;
    for (std::size_t end = line.find('\t'); end != std::string::npos;
         end = line.find('\t', begin)) {
        fields.push_back(line.substr(begin, end - begin));
        begin = end + 1;
    }
    fields.push_back(line.substr(begin));
    return fields;
}

float number_of(const std::string& field) {
    return field == "-" ? unknown : std::strtof(field.c_str(), nullptr);
}

float at_least(float label, float least) {
    if (label < 0) return unknown;
    return label >= least ? 1.0F : 0.0F;
}

Stop stop_of(std::string_view after) {
    const auto has = [&](std::string_view sign) {
        return after.find(sign) != std::string_view::npos;
    };
    if (has("..")) return Stop::dots;
    if (has("?")) return Stop::question;
    if (has("!")) return Stop::exclamation;
    if (has(".")) return Stop::full;
    if (has(";")) return Stop::strong;
    return has(",") ? Stop::comma : Stop::none;
}

Word word_of(const std::vector<std::string>& fields, bool labelled) {
    Word word{.text = fields[0], .after = fields[2] == "-" ? "" : fields[2]};
    if (labelled) {
        const float stress = number_of(fields[3]);
        const float juncture = number_of(fields[4]);
        word.target = {at_least(stress, 1), at_least(stress, 2), at_least(juncture, 1),
                       at_least(juncture, 2)};
        word.judged = juncture >= 0 && number_of(fields[8]) >= 0;
    } else {
        word.target = {number_of(fields[9]), number_of(fields[10]), number_of(fields[11]),
                       number_of(fields[12])};
    }
    return word;
}

void find_rows(Sentence& sentence) {
    static std::unordered_map<std::string, std::uint8_t> syllables;
    std::vector<std::string> folded;
    folded.reserve(sentence.words.size());
    for (const Word& word : sentence.words)
        folded.push_back(unicode::fold(word.text));
    std::vector<PhrasingWord> words;
    for (std::size_t i = 0; i < folded.size(); ++i) {
        auto [known, fresh] = syllables.try_emplace(folded[i]);
        if (fresh) {
            known->second = static_cast<std::uint8_t>(
                std::min(syllable_count(pronounce(folded[i]).phones), 255));
        }
        const char first = sentence.words[i].text[0];
        words.push_back({folded[i], known->second, first >= 'A' && first <= 'Z',
                         stop_of(sentence.words[i].after)});
    }
    const PhrasingFeatures features(words);
    sentence.rows.resize(words.size());
    for (std::size_t i = 0; i < words.size(); ++i)
        features.rows(i, sentence.rows[i]);
}

std::vector<Sentence> read_labels(std::istream& in) {
    std::vector<Sentence> sentences;
    for (std::string line; std::getline(in, line);) {
        const std::vector<std::string> fields = fields_of(line);
        if (fields[0] == "#cols") continue;
        if (fields[0] == "#" && fields.size() == 3) {
            Sentence& sentence = sentences.emplace_back();
            sentence.labelled = fields[1] == "dev";
            sentence.reader = fields[2].substr(0, fields[2].find('_'));
        } else if (fields.size() == 13 && !sentences.empty() && !fields[0].empty()) {
            sentences.back().words.push_back(word_of(fields, sentences.back().labelled));
        }
    }
    for (Sentence& sentence : sentences)
        find_rows(sentence);
    return sentences;
}

// --- learning ------------------------------------------------------------------------------------

struct Row {
    Outputs weight{};
    Outputs squares{1e-3F, 1e-3F, 1e-3F,
                    1e-3F}; // of the slopes so far: what was seen often moves less
};
using Weights = std::vector<Outputs>;

// A small generator of its own, so that the order is the same everywhere.
class Shuffle {
public:
    void operator()(std::vector<const Sentence*>& order) {
        for (std::size_t i = order.size(); i-- > 1;)
            std::swap(order[i], order[next() % (i + 1)]);
    }

private:
    std::uint64_t next() {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return state_ >> 33U;
    }
    std::uint64_t state_ = 7;
};

void learn_word(std::vector<Row>& rows, const PhrasingRows& seen, const Outputs& target) {
    Outputs sum{};
    for (const std::uint32_t row : seen) {
        for (std::size_t i = 0; i < phrasing_outputs; ++i)
            sum[i] += rows[row].weight[i];
    }
    Outputs slope{};
    for (std::size_t i = 0; i < phrasing_outputs; ++i) {
        if (target[i] >= 0) slope[i] = 1.0F / (1.0F + std::exp(-sum[i])) - target[i];
    }
    for (const std::uint32_t index : seen) {
        Row& row = rows[index];
        for (std::size_t i = 0; i < phrasing_outputs; ++i) {
            row.squares[i] += slope[i] * slope[i];
            row.weight[i] -= rate * slope[i] / std::sqrt(row.squares[i]);
        }
    }
}

// The mean of the weights at every quarter of the later passes.
Weights learn(std::vector<const Sentence*> order) {
    std::vector<Row> rows(std::size_t{1} << phrasing_row_bits);
    Weights mean(rows.size(), Outputs{});
    int taken = 0;
    Shuffle shuffle;
    const std::size_t quarter = std::max<std::size_t>(1, order.size() / 4);
    for (int pass = 0; pass < passes; ++pass) {
        shuffle(order);
        for (std::size_t i = 0; i < order.size(); ++i) {
            for (std::size_t j = 0; j < order[i]->rows.size(); ++j)
                learn_word(rows, order[i]->rows[j], order[i]->words[j].target);
            if (pass == 0 || (i + 1) % quarter != 0) continue;
            ++taken;
            for (std::size_t row = 0; row < rows.size(); ++row) {
                for (std::size_t k = 0; k < phrasing_outputs; ++k)
                    mean[row][k] += rows[row].weight[k];
            }
        }
    }
    for (Outputs& row : mean) {
        for (float& weight : row)
            weight /= static_cast<float>(std::max(1, taken));
    }
    return mean;
}

// One scale an output. The few largest weights are cut: a finer step for the rest is worth more.
PhrasingTable pack(const Weights& weights) {
    static PhrasingTable table;
    for (std::size_t k = 0; k < phrasing_outputs; ++k) {
        std::vector<float> sizes;
        sizes.reserve(weights.size());
        for (const Outputs& row : weights)
            sizes.push_back(std::fabs(row[k]));
        std::sort(sizes.begin(), sizes.end());
        table.scales[k] = sizes[sizes.size() - 1 - sizes.size() / 2000] / 127.0F;
        for (std::size_t row = 0; row < weights.size(); ++row) {
            const float steps = std::nearbyint(weights[row][k] / table.scales[k]);
            table.rows[row][k] = static_cast<std::int8_t>(std::clamp(steps, -127.0F, 127.0F));
        }
    }
    return table;
}

// --- judging -------------------------------------------------------------------------------------

struct Judged {
    const Sentence* sentence;
    std::vector<PhrasingChances> chances;
};

void print_stress(const std::vector<Judged>& judged) {
    double words = 0;
    double right_two = 0;
    double right_three = 0;
    double sentences = 0;
    double top = 0;
    double top_strong = 0;
    for (const Judged& item : judged) {
        float best = -1;
        Outputs best_target{};
        for (std::size_t i = 0; i < item.chances.size(); ++i) {
            const Outputs& target = item.sentence->words[i].target;
            const float any = item.chances[i].stressed;
            const float strong = item.chances[i].strongly_stressed;
            if (target[0] < 0) continue;
            const int label = any < 0.5F ? 0 : strong > any / 2 ? 2 : 1;
            const int truth = static_cast<int>(target[0] + target[1]);
            ++words;
            right_two += (label > 0) == (truth > 0) ? 1 : 0;
            right_three += label == truth ? 1 : 0;
            if (any + strong <= best) continue;
            best = any + strong;
            best_target = target;
        }
        if (item.sentence->words.size() < 5 || best < 0) continue;
        ++sentences;
        top += best_target[0];
        top_strong += best_target[1];
    }
    std::printf(
        "stress: two-way %.1f %%, three-way %.1f %%; top word stressed %.3f, strongly %.3f\n",
        100 * right_two / words, 100 * right_three / words, top / sentences,
        top_strong / sentences);
}

struct Place {
    float value; // pause_value
    int truth;   // 0 none, 1 some, 2 strong
};

// Where "this value and more" balances precision and recall best for labels of `least` and more.
void print_best(const std::vector<Place>& places, int least, const char* name) {
    double all = 0;
    for (const Place& place : places)
        all += place.truth >= least ? 1 : 0;
    double found = 0;
    double best = 0;
    float best_at = 0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        found += places[i].truth >= least ? 1 : 0;
        const double balance = 2 * found / (static_cast<double>(i + 1) + all);
        if (balance <= best) continue;
        best = balance;
        best_at = places[i].value;
    }
    std::printf("%s: F1 %.3f from a value of %.2f\n", name, best, static_cast<double>(best_at));
}

void print_precision(const std::vector<Place>& places, std::size_t count) {
    double found = 0;
    for (std::size_t i = 0; i < count && i < places.size(); ++i)
        found += places[i].truth > 0 ? 1 : 0;
    std::printf("pauses: the likeliest %zu are right %.3f\n", count,
                found / static_cast<double>(count));
}

// Pauses where no punctuation gives them away, the last word of a sentence left out.
void print_pauses(const std::vector<Judged>& judged) {
    std::vector<Place> places;
    std::size_t words = 0;
    for (const Judged& item : judged) {
        words += item.chances.size();
        for (std::size_t i = 0; i + 1 < item.chances.size(); ++i) {
            const Word& word = item.sentence->words[i];
            if (!word.judged || !word.after.empty()) continue;
            const PhrasingChances& chances = item.chances[i];
            places.push_back({pause_value(chances.paused, chances.strongly_paused),
                              static_cast<int>(word.target[2] + word.target[3])});
        }
    }
    std::stable_sort(places.begin(), places.end(),
                     [](const Place& a, const Place& b) { return a.value > b.value; });
    print_best(places, 1, "pauses");
    print_best(places, 2, "long pauses");
    print_precision(places, words / 24);
    print_precision(places, words / 48);
}

// Readers by their share of the labels, dealt out in turn.
std::map<std::string, int> deal_readers(const std::vector<Sentence>& sentences) {
    std::map<std::string, int> counts;
    for (const Sentence& sentence : sentences) {
        if (sentence.labelled) ++counts[sentence.reader];
    }
    std::vector<std::pair<int, std::string>> readers;
    readers.reserve(counts.size());
    for (const auto& [reader, count] : counts)
        readers.emplace_back(-count, reader);
    std::sort(readers.begin(), readers.end());
    std::map<std::string, int> folds;
    for (std::size_t i = 0; i < readers.size(); ++i)
        folds[readers[i].second] = static_cast<int>(i % fold_count);
    return folds;
}

void judge(const std::vector<Sentence>& sentences) {
    const std::map<std::string, int> folds = deal_readers(sentences);
    std::vector<Judged> judged;
    for (int fold = 0; fold < fold_count; ++fold) {
        std::vector<const Sentence*> heard;
        std::vector<const Sentence*> held;
        for (const Sentence& sentence : sentences) {
            const bool out = sentence.labelled && folds.at(sentence.reader) == fold;
            (out ? held : heard).push_back(&sentence);
        }
        const PhrasingTable table = pack(learn(heard));
        for (const Sentence* sentence : held) {
            Judged item{.sentence = sentence, .chances = {}};
            for (const PhrasingRows& rows : sentence->rows)
                item.chances.push_back(phrasing_chances(table, rows));
            judged.push_back(std::move(item));
        }
    }
    print_stress(judged);
    print_pauses(judged);
}

int write_table(const std::vector<Sentence>& sentences, const char* path) {
    std::vector<const Sentence*> all;
    all.reserve(sentences.size());
    for (const Sentence& sentence : sentences)
        all.push_back(&sentence);
    const PhrasingTable table = pack(learn(all));
    std::ofstream out(path, std::ios::binary);
    out.write(reinterpret_cast<const char*>(&table), sizeof table);
    if (out.flush()) return 0;
    std::fprintf(stderr, "train_phrasing: %s cannot be written\n", path);
    return 1;
}

} // namespace

int main(int argc, char** argv) {
    if (argc != 2) {
        std::fputs("usage: zcat labels.tsv.gz | train_phrasing phrasing.bin|--folds\n", stderr);
        return 2;
    }
    const std::vector<Sentence> sentences = read_labels(std::cin);
    if (sentences.empty()) {
        std::fputs("train_phrasing: no sentence on standard input\n", stderr);
        return 1;
    }
    if (std::string_view(argv[1]) != "--folds") return write_table(sentences, argv[1]);
    judge(sentences);
    return 0;
}
