// Postal addresses: house numbers, directions, street words, US states and ZIP codes (the
// abbreviations of the US Postal Service).
#include "base/lists.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

struct Short {
    std::string_view sign;
    std::string_view words;
};

constexpr auto streets = std::to_array<Short>({
    {"ave", "avenue"},
    {"av", "avenue"},
    {"avenue", "avenue"},
    {"blvd", "boulevard"},
    {"boulevard", "boulevard"},
    {"cir", "circle"},
    {"circle", "circle"},
    {"ct", "court"},
    {"court", "court"},
    {"crescent", "crescent"},
    {"dr", "drive"},
    {"drive", "drive"},
    {"expy", "expressway"},
    {"fwy", "freeway"},
    {"highway", "highway"},
    {"hwy", "highway"},
    {"lane", "lane"},
    {"ln", "lane"},
    {"parkway", "parkway"},
    {"pkwy", "parkway"},
    {"pl", "place"},
    {"place", "place"},
    {"plaza", "plaza"},
    {"plz", "plaza"},
    {"rd", "road"},
    {"road", "road"},
    {"sq", "square"},
    {"square", "square"},
    {"st", "street"},
    {"street", "street"},
    {"ter", "terrace"},
    {"terrace", "terrace"},
    {"trl", "trail"},
    {"way", "way"},
});

constexpr auto directions = std::to_array<Short>({
    {"N", "north"},
    {"S", "south"},
    {"E", "east"},
    {"W", "west"},
    {"NE", "northeast"},
    {"NW", "northwest"},
    {"SE", "southeast"},
    {"SW", "southwest"},
});

constexpr auto states = std::to_array<Short>({
    {"AL", "alabama"},        {"AK", "alaska"},         {"AZ", "arizona"},
    {"AR", "arkansas"},       {"CA", "california"},     {"CO", "colorado"},
    {"CT", "connecticut"},    {"DE", "delaware"},       {"DC", ".dc"},
    {"FL", "florida"},        {"GA", "georgia"},        {"HI", "hawaii"},
    {"ID", "idaho"},          {"IL", "illinois"},       {"IN", "indiana"},
    {"IA", "iowa"},           {"KS", "kansas"},         {"KY", "kentucky"},
    {"LA", "louisiana"},      {"ME", "maine"},          {"MD", "maryland"},
    {"MA", "massachusetts"},  {"MI", "michigan"},       {"MN", "minnesota"},
    {"MS", "mississippi"},    {"MO", "missouri"},       {"MT", "montana"},
    {"NE", "nebraska"},       {"NV", "nevada"},         {"NH", "new hampshire"},
    {"NJ", "new jersey"},     {"NM", "new mexico"},     {"NY", "new york"},
    {"NC", "north carolina"}, {"ND", "north dakota"},   {"OH", "ohio"},
    {"OK", "oklahoma"},       {"OR", "oregon"},         {"PA", "pennsylvania"},
    {"RI", "rhode island"},   {"SC", "south carolina"}, {"SD", "south dakota"},
    {"TN", "tennessee"},      {"TX", "texas"},          {"UT", "utah"},
    {"VT", "vermont"},        {"VA", "virginia"},       {"WA", "washington"},
    {"WV", "west virginia"},  {"WI", "wisconsin"},      {"WY", "wyoming"},
    {"PR", "puerto rico"},
});

template <std::size_t size>
std::string_view find(const std::array<Short, size>& table, std::string_view sign) {
    const auto* found = std::find_if(table.begin(), table.end(),
                                     [sign](const Short& entry) { return entry.sign == sign; });
    return found == table.end() ? std::string_view{} : found->words;
}

bool all_digits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), ascii::is_digit);
}

bool is_street_name(std::string_view word) {
    return ascii::is_upper(word[0]) || ascii::is_digit(word[0]);
}

// The street word that ends the address begun by the house number at i; i itself if there is none.
std::size_t street_of(const Passage& passage, std::size_t i) {
    std::size_t names = 0;
    for (std::size_t j = i + 1; j < passage.size() && j <= i + 6 && passage.adjacent(j - 1); ++j) {
        const std::string word = passage.text(j);
        if (word.empty()) break;
        // "1 TB drive" is no address.
        if (names == 0 && !unit_words(word, Number::singular, passage.language()).empty()) break;
        if (names > 0 && !find(streets, ascii::lower(word)).empty()) return j;
        if (!is_street_name(word)) break;
        if (find(directions, word).empty()) ++names;
    }
    return i;
}

std::string house_number(std::string_view digits, Language language) {
    return language == Language::en_gb && digits.size() <= 3 ? cardinal(digits, language)
                                                             : in_pairs(digits, language);
}

bool say_zip(Passage& passage, std::size_t i, std::string_view token) {
    const bool plain = token.size() == 5 && all_digits(token);
    const bool plus_four = token.size() == 10 && token[5] == '-' &&
                           all_digits(token.substr(0, 5)) && all_digits(token.substr(6));
    if ((!plain && !plus_four) || i == 0 ||
        !(passage.adjacent(i - 1) || passage.joined_by_comma(i - 1)))
        return false;
    const std::string before = passage.text(i - 1);
    const std::string folded = ascii::lower(before);
    const bool state = !find(states, before).empty() ||
                       std::any_of(states.begin(), states.end(),
                                   [&](const Short& entry) { return entry.words == folded; }) ||
                       folded == "zip" || folded == "code" || folded == "york" ||
                       folded == "jersey" || folded == "carolina";
    if (!state) return false;
    passage.say(i, digit_by_digit(token));
    return true;
}

} // namespace

bool say_address(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (say_zip(passage, i, token)) return true;
    if (!all_digits(token) || token.size() > 5) return false;
    const std::size_t street = street_of(passage, i);
    if (street == i) return false;
    passage.say(i, house_number(token, passage.language()));
    for (std::size_t j = i + 1; j < street; ++j) {
        const std::string_view direction = find(directions, passage.text(j));
        if (!direction.empty()) passage.say(j, direction);
    }
    passage.say(street, find(streets, passage.folded(street)));
    if (!passage.adjacent(street)) return true;
    const std::string_view direction = find(directions, passage.text(street + 1));
    if (!direction.empty()) passage.say(street + 1, direction);
    return true;
}

// "E. 42nd St.", "N. Elm St.", "1st St. NW": a direction before a street or behind one.
bool say_direction(Passage& passage, std::size_t i) {
    std::string sign(passage.raw(i));
    if (sign.size() > 3) return false;
    std::erase(sign, '.'); // "the N.W. corner"
    const std::string_view words = find(directions, sign);
    if (words.empty()) return false;
    const std::string next = passage.adjacent(i) ? passage.text(i + 1) : std::string{};
    const bool numbered = next.size() > 2 && ascii::is_digit(next[0]) &&
                          ascii::is_letter(next.back()) && passage.adjacent(i + 1) &&
                          !find(streets, passage.folded(i + 2)).empty();
    const bool named = !next.empty() && ascii::is_upper(next[0]) && next.size() > 1 &&
                       passage.joined(i + 1) && ascii::is_upper(passage.raw(i + 2)[0]) &&
                       !find(streets, passage.folded(i + 2)).empty(); // "N. Elm St."
    const bool behind = i > 0 && passage.raw(i).size() == 2 && passage.adjacent(i - 1) &&
                        !find(streets, passage.folded(i - 1)).empty();
    // "S. Korea", "N. Ireland"
    static constexpr auto lands = std::to_array<std::string_view>({
        "africa",  "african",   "america",  "american", "asia",      "carolina", "dakota",
        "england", "europe",    "germany",  "ireland",  "korea",     "korean",   "koreans",
        "london",  "macedonia", "virginia", "wales",    "yorkshire",
    });
    const bool land = passage.adjacent(i) && !next.empty() && ascii::is_upper(next[0]) &&
                      is_one_of(ascii::lower(next), lands);
    // "12 mi. SE of town", "NW winds"
    static constexpr auto places = std::to_array<std::string_view>(
        {"breeze", "coast", "corner", "of", "side", "wind", "winds"});
    const bool bearing = sign.size() == 2 && passage.adjacent(i) && is_one_of(next, places);
    const std::string before = passage.follows(i) ? passage.folded(i - 1) : std::string{};
    const bool of_wind = passage.raw(i).size() == 2 && (before == "wind" || before == "winds");
    if (!numbered && !named && !behind && !land && !bearing && !of_wind) return false;
    // Northern Ireland, but North Korea
    const std::string country = land ? ascii::lower(next) : std::string{};
    const bool part = country == "ireland" || country == "england" || country == "europe";
    passage.say(i, std::string(words) + (part ? "ern" : ""));
    return true;
}

// "Santa, FL 95051", "Portland, OR.": a state only behind a place and its comma, or before a ZIP
// code.
bool say_state(Passage& passage, std::size_t i) {
    const std::string_view words = find(states, passage.raw(i));
    if (words.empty() || i == 0 || passage.shouts()) return false;
    const std::string before = passage.text(i - 1);
    const bool place = !before.empty() && ascii::is_upper(before[0]);
    const std::string next =
        passage.adjacent(i) || passage.joined_by_comma(i) ? passage.text(i + 1) : std::string{};
    const bool zip = next.size() >= 5 && all_digits(next.substr(0, 5));
    const bool open = passage.joined(i) && !zip;
    if (!place || !(zip || (passage.joined_by_comma(i - 1) && !open))) return false;
    passage.say(i, words);
    return true;
}

std::string_view street_words(std::string_view folded) {
    return find(streets, folded);
}

} // namespace say
