// Figures, ranges, magnitudes and attributive use. Currencies and units have files of their own.
#include "speech/quantity.h"

#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/numbers.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

struct Sign {
    std::string_view sign;
    std::string_view words;
};

constexpr auto signs = std::to_array<Sign>({
    {"+/-", "plus or minus"},
    {"-", "minus"},
    {"+", "plus"},
    {"~", "about"},
    {"≈", "about"},
    {"±", "plus or minus"},
    {"<=", "at most"},
    {">=", "at least"},
    {"≤", "at most"},
    {"≥", "at least"},
    {"<", "less than"},
    {">", "more than"},
    {"×", "times"},
    {"÷", "divided by"},
    {"=", "equals"},
});

void take_sign(std::string_view& rest, Figure& figure) {
    for (const Sign& sign : signs) {
        if (!rest.starts_with(sign.sign)) continue;
        append_words(figure.sign, sign.words);
        rest.remove_prefix(sign.sign.size());
        return;
    }
}

void take_currency(std::string_view& rest, Figure& figure) {
    std::size_t digit = 0;
    while (digit < rest.size() && digit < 5 && !ascii::is_digit(rest[digit]) &&
           rest[digit] != '.' && rest[digit] != '-') {
        ++digit;
    }
    if (digit == 0 || currency_of(rest.substr(0, digit)) == nullptr) return;
    figure.currency = rest.substr(0, digit);
    rest.remove_prefix(digit);
}

std::size_t digits_at(std::string_view text) {
    const auto end = std::find_if_not(text.begin(), text.end(), ascii::is_digit);
    return static_cast<std::size_t>(end - text.begin());
}

// Digits with commas before every three; false if the commas stand elsewhere.
bool take_whole(std::string_view& rest, Figure& figure) {
    const std::size_t first = digits_at(rest);
    figure.whole = rest.substr(0, first);
    rest.remove_prefix(first);
    while (first > 0 && rest.starts_with(',') && digits_at(rest.substr(1)) > 0) {
        if (digits_at(rest.substr(1)) != 3 || first > 3) return false;
        figure.whole += rest.substr(1, 3);
        figure.grouped = true;
        rest.remove_prefix(4);
    }
    return true;
}

constexpr auto fraction_signs = std::to_array<FractionSign>({
    {"½", "a half", "one half"},
    {"¼", "a quarter", "one quarter"},
    {"¾", "three quarters", "three quarters"},
    {"⅓", "a third", "one third"},
    {"⅔", "two thirds", "two thirds"},
    {"⅕", "a fifth", "one fifth"},
    {"⅖", "two fifths", "two fifths"},
    {"⅗", "three fifths", "three fifths"},
    {"⅘", "four fifths", "four fifths"},
    {"⅙", "a sixth", "one sixth"},
    {"⅚", "five sixths", "five sixths"},
    {"⅛", "an eighth", "one eighth"},
    {"⅜", "three eighths", "three eighths"},
    {"⅝", "five eighths", "five eighths"},
    {"⅞", "seven eighths", "seven eighths"},
});

constexpr auto determiners = std::to_array<std::string_view>({
    "a",
    "an",
    "another",
    "each",
    "every",
    "her",
    "his",
    "my",
    "our",
    "that",
    "the",
    "their",
    "this",
    "your",
});

// Words behind a quantity that are no noun, beyond the function words.
constexpr auto no_nouns = std::to_array<std::string_view>({
    "ago",  "apart", "apiece", "away",  "back", "deep", "down", "each",  "extra",
    "high", "later", "less",   "long",  "more", "off",  "old",  "only",  "per",
    "tall", "thick", "thin",   "today", "too",  "up",   "wide", "worth",
});

} // namespace

const FractionSign* fraction_sign_at(std::string_view text) {
    const auto* found =
        std::find_if(fraction_signs.begin(), fraction_signs.end(),
                     [text](const FractionSign& sign) { return text.starts_with(sign.sign); });
    return found == fraction_signs.end() ? nullptr : found;
}

std::optional<Figure> read_figure(std::string_view token) {
    Figure figure;
    std::string_view rest = token;
    take_sign(rest, figure);
    take_currency(rest, figure);
    if (!figure.currency.empty()) take_sign(rest, figure);
    if (!take_whole(rest, figure)) return std::nullopt;
    if (rest.starts_with('.')) {
        const std::size_t digits = digits_at(rest.substr(1));
        if (digits > 0) {
            figure.fraction = rest.substr(1, digits);
            rest.remove_prefix(1 + digits);
        }
    }
    if (figure.whole.empty() && figure.fraction.empty()) return std::nullopt;
    figure.suffix = rest;
    return figure;
}

std::string number_words(const Figure& figure, Language language) {
    std::string words = figure.sign;
    const bool identifier =
        !figure.grouped && figure.fraction.empty() &&
        (figure.whole.size() > 12 || (figure.whole.size() > 1 && figure.whole[0] == '0'));
    append_words(words, identifier ? digit_by_digit(figure.whole)
                                   : decimal(figure.whole, figure.fraction, language));
    if (const FractionSign* sign = fraction_sign_at(figure.suffix)) {
        append_words(words, "and");
        append_words(words, sign->behind);
    }
    return words;
}

std::optional<FigureRange> read_range(std::string_view token) {
    const std::size_t hyphen = token.find('-', 1);
    if (hyphen == std::string_view::npos) return std::nullopt;
    const std::optional<Figure> from = read_figure(token.substr(0, hyphen));
    const std::optional<Figure> to = read_figure(token.substr(hyphen + 1));
    if (!from || !to || to->suffix.find('-') != std::string::npos) return std::nullopt;
    return FigureRange{*from, *to};
}

std::string_view magnitude_of_suffix(std::string_view suffix) {
    struct Magnitude {
        std::string_view suffix;
        std::string_view words;
    };
    constexpr auto magnitudes = std::to_array<Magnitude>({
        {"k", "thousand"},
        {"K", "thousand"},
        {"m", "million"},
        {"M", "million"},
        {"mn", "million"},
        {"mm", "million"},
        {"MM", "million"},
        {"mil", "million"},
        {"b", "billion"},
        {"B", "billion"},
        {"bn", "billion"},
        {"Bn", "billion"},
        {"bil", "billion"},
        {"t", "trillion"},
        {"T", "trillion"},
        {"tn", "trillion"},
        {"trn", "trillion"},
    });
    for (const Magnitude& magnitude : magnitudes) {
        if (suffix == magnitude.suffix) return magnitude.words;
    }
    return magnitude_of_word(suffix);
}

std::string_view magnitude_of_word(std::string_view word) {
    for (const std::string_view magnitude :
         {"thousand", "million", "billion", "trillion", "quadrillion", "lakh", "crore"}) {
        if (word == magnitude) return magnitude;
    }
    return {};
}

bool is_line_count(std::string_view digits) {
    static constexpr auto counts = std::to_array<std::string_view>(
        {"144", "240", "360", "480", "576", "720", "1080", "1440", "2160"});
    return is_one_of(digits, counts);
}

bool is_lower_plural(std::string_view word) {
    static constexpr auto singular =
        std::to_array<std::string_view>({"always", "does", "perhaps", "this", "thus", "was"});
    return word.size() > 3 && ascii::is_lower(word[0]) && word.ends_with('s') &&
           !word.ends_with("ss") && word.find('\'') == std::string_view::npos && // "it's"
           !is_one_of(word, singular);
}

bool is_counted_in_millions(std::string_view word) {
    static constexpr auto nouns = std::to_array<std::string_view>({
        "barrels",   "children",  "copies",     "customers",   "dollars",  "downloads", "euros",
        "followers", "homes",     "households", "jobs",        "men",      "people",    "pounds",
        "readers",   "residents", "streams",    "subscribers", "tourists", "users",     "viewers",
        "views",     "visitors",  "votes",      "voters",      "women",    "workers",
    });
    return is_one_of(word, nouns);
}

// "35mm film", "a 60W bulb": measures of size and strength stay singular before what they tell
// apart, even without a determiner; those of amount do not ("200g sugar").
bool tells_apart(const Passage& passage, std::size_t i, std::string_view unit) {
    static constexpr auto sizes = std::to_array<std::string_view>(
        {"\"", "★", "mm", "V", "W", "kW", "MB", "GB", "TB", "MP", "Hz", "MHz", "GHz"});
    if (!is_one_of(unit, sizes) || !passage.joined(i)) return false;
    const std::string behind = passage.folded(i + 1);
    if (behind.size() < 3 || !ascii::is_lower(passage.raw(i + 1)[0]) || is_function_word(behind) ||
        behind.ends_with("er") || behind.ends_with("ly"))
        return false;
    return !is_one_of(behind, no_nouns);
}

// "a 12 oz can", "£20 notes": what is named by its size or worth, with or without a determiner.
bool is_named_by_size(std::string_view noun) {
    static constexpr auto nouns = std::to_array<std::string_view>({
        "angle",  "angles",  "bag",     "bags",     "banknote", "battery", "bill",
        "bills",  "bottle",  "bottles", "box",      "boxes",    "budget",  "bulb",
        "bulbs",  "carton",  "cartons", "coin",     "coins",    "deal",    "deposit",
        "drive",  "drives",  "engine",  "fuse",     "fuses",    "charger", "engines",
        "fee",    "fine",    "fines",   "grant",    "jack",     "jar",     "jars",
        "jug",    "lawsuit", "lens",    "lenses",   "loan",     "loans",   "mug",
        "note",   "notes",   "pack",    "packet",   "packets",  "packs",   "prize",
        "race",   "races",   "relay",   "rule",     "sack",     "sacks",   "settlement",
        "sprint", "ssd",     "ticket",  "tickets",  "tin",      "tins",    "valuation",
        "view",   "views",   "voucher", "vouchers",
    });
    return is_one_of(noun, nouns);
}

bool is_attributive(const Passage& passage, std::size_t first, std::size_t last) {
    if (passage.joined(last) && is_named_by_size(passage.folded(last + 1))) return true;
    if (!passage.follows(first) || !passage.joined(last)) return false;
    const std::string before = passage.folded(first - 1);
    if (!is_one_of(before, determiners)) return false;
    const std::string behind = passage.folded(last + 1);
    if (behind == "can") return true; // "the 12 oz can"
    if (behind.empty() || !ascii::is_lower(behind[0]) || is_function_word(behind)) return false;
    return !is_one_of(behind, no_nouns);
}

} // namespace say
