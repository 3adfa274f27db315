// Roman numbers: after headings ("Chapter IV"), after rulers and popes ("Henry VIII"), before
// "century". Elsewhere capitals are initials, and "I" is the speaker.
#include "base/lists.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

constexpr auto headings = std::to_array<std::string_view>({
    "act",      "annex",   "appendix", "article", "book",   "bowl",  "category", "chapter", "class",
    "division", "episode", "exhibit",  "figure",  "grade",  "group", "lesson",   "level",   "mark",
    "mk",       "module",  "number",   "part",    "phase",  "psalm", "quarter",  "round",   "scene",
    "schedule", "season",  "section",  "session", "stage",  "step",  "symphony", "table",   "tier",
    "title",    "type",    "unit",     "vol",     "volume", "war",
});
static_assert(std::is_sorted(headings.begin(), headings.end()));

// Given names that rulers and popes share and count.
constexpr auto rulers = std::to_array<std::string_view>({
    "albert",  "alexander", "alfonso",   "andrew",    "baldwin",    "benedict",    "boniface",
    "carl",    "catherine", "charles",   "christian", "clement",    "constantine", "darius",
    "david",   "edward",    "elizabeth", "eric",      "ferdinand",  "francis",     "frederick",
    "george",  "gregory",   "gustav",    "harald",    "henry",      "innocent",    "ivan",
    "james",   "john",      "joseph",    "julius",    "juan",       "leo",         "leopold",
    "louis",   "ludwig",    "margaret",  "mary",      "mehmed",     "napoleon",    "nicholas",
    "otto",    "paul",      "peter",     "philip",    "pius",       "ptolemy",     "ramesses",
    "richard", "robert",    "stephen",   "sixtus",    "theodosius", "thutmose",    "umberto",
    "urban",   "victoria",  "wilhelm",   "william",
});

constexpr auto titles = std::to_array<std::string_view>({
    "archduke",
    "czar",
    "duke",
    "emperor",
    "empress",
    "kaiser",
    "king",
    "pope",
    "prince",
    "princess",
    "queen",
    "sultan",
    "tsar",
});

constexpr auto behind_ruler = std::to_array<std::string_view>({
    "and",
    "as",
    "became",
    "died",
    "had",
    "in",
    "is",
    "of",
    "reigned",
    "ruled",
    "the",
    "was",
    "who",
    "would",
});

bool is_name(std::string_view text) {
    return text.size() > 1 && ascii::is_upper(text[0]) && ascii::is_lower(text[1]);
}

// "Part", and "Parts I and II".
bool is_heading(std::string_view folded) {
    if (is_one_of(folded, headings)) return true;
    return folded.ends_with('s') && is_one_of(folded.substr(0, folded.size() - 1), headings);
}

// "World War I ended", "Type I error": what no sentence about oneself goes on with.
bool is_first_of_its_kind(const Passage& passage, std::size_t i) {
    static constexpr auto kinds = std::to_array<std::string_view>(
        {"diabetes", "error", "errors", "medal", "medals", "trial", "trials"});
    if (passage.folded(i - 1) == "war")
        return i > 1 && passage.joined(i - 2) && passage.folded(i - 2) == "world";
    return is_one_of(passage.folded(i + 1), kinds);
}

// "I" counts only where no sentence can go on with it: "George I of", "Part I:".
bool i_is_number(const Passage& passage, std::size_t i, bool heading) {
    if (!passage.joined(i)) return true;
    const std::string next = passage.folded(i + 1);
    if (heading && is_name(passage.text(i - 1)) && is_first_of_its_kind(passage, i)) return true;
    if (heading)
        return is_name(passage.text(i - 1)) && (next == "of" || next == "and" || next == "is" ||
                                                next == "was" || is_name(passage.text(i + 1)));
    return is_one_of(next, behind_ruler) && next != "had" && next != "would" && next != "was";
}

// What is counted in the name itself: "the XXI Olympics".
constexpr auto counted_names = std::to_array<std::string_view>({
    "army",
    "assembly",
    "congress",
    "corps",
    "dynasty",
    "edition",
    "games",
    "international",
    "legion",
    "olympiad",
    "olympic",
    "olympics",
    "summer",
    "winter",
});

// Letters of a number that no initials share ("CD", "MD", "DC").
bool is_small_value(std::string_view token) {
    return token.find_first_not_of("IVX") == std::string_view::npos;
}

// "Chapters IV-VI", and the second of "Acts I and II".
bool say_span_of_parts(Passage& passage, std::size_t i, const std::string& token) {
    const Language language = passage.language();
    const auto said = [&](int number) { return cardinal(number, language); };
    if (const std::size_t hyphen = token.find('-'); hyphen != std::string::npos) {
        const std::optional<int> from = roman(token.substr(0, hyphen));
        const std::optional<int> to = roman(token.substr(hyphen + 1));
        if (!from || !to || *from >= *to || i == 0 || !passage.adjacent(i - 1) ||
            !is_heading(passage.folded(i - 1)))
            return false;
        passage.say(i, said(*from) + " to " + said(*to));
        return true;
    }
    const std::optional<int> number = roman(token);
    if (!number || i < 3 || !passage.joined(i - 1) || !passage.joined(i - 2) ||
        !passage.joined(i - 3))
        return false;
    const std::string link = passage.folded(i - 1);
    const bool linked = link == "and" || link == "or" || link == "to" || link == "through";
    if (!linked || !is_heading(passage.folded(i - 3)) || !roman(passage.text(i - 2))) return false;
    if (token == "I") return false;
    passage.say(i, said(*number));
    return true;
}

bool say_as(Passage& passage, std::size_t i, const std::string& words, std::string_view ending) {
    passage.say(i, words + std::string(ending));
    return true;
}

} // namespace

bool say_roman(Passage& passage, std::size_t i) {
    std::string token = passage.text(i);
    std::string ending;
    if (token.ends_with("'s")) {
        ending = "'s";
        token.resize(token.size() - 2);
    }
    if (!passage.shouts() && say_span_of_parts(passage, i, token)) return true;
    const std::optional<int> number = roman(token);
    if (!number || passage.shouts()) return false;
    const std::string digits = std::to_string(*number);
    const Language language = passage.language();
    const bool century =
        passage.joined(i) && passage.folded(i + 1).starts_with("centur") && token != "I";
    if (century) return say_as(passage, i, ordinal(digits, language), ending);
    // "MCMXCIV", which no initials look like
    if (token.size() >= 5 && token[0] == 'M' && *number > 1000 && *number < 2100)
        return say_as(passage, i, year(*number, language), ending);
    // "II. Methods" heads a part.
    if (i == 0 && token.size() > 1 && is_small_value(token) && passage.joined_by_stop(i) &&
        is_name(passage.text(i + 1)))
        return say_as(passage, i, cardinal(*number, language), ending);
    if (i == 0 || !passage.adjacent(i - 1)) return false;
    if (token.size() > 1 && is_small_value(token) && passage.folded(i - 1) == "the" &&
        passage.joined(i) && is_one_of(passage.folded(i + 1), counted_names))
        return say_as(passage, i, ordinal(digits, language), ending);
    const std::string before = passage.text(i - 1);
    const std::string folded = ascii::lower(before);
    const bool heading = is_heading(folded);
    const bool titled = i > 1 && passage.joined(i - 2) && is_one_of(passage.folded(i - 2), titles);
    const bool ruler = is_name(before) && (is_one_of(folded, rulers) || titled);
    if (token == "I" && !((heading || ruler) && i_is_number(passage, i, heading))) return false;
    // One letter alone after a name is an initial ("Charles V" is not, but "James C" is).
    if (token.size() == 1 && token != "I" && token != "V" && token != "X") return false;
    if (heading) return say_as(passage, i, cardinal(*number, language), ending);
    if (ruler) return say_as(passage, i, "the " + ordinal(digits, language), ending);
    // "John Hill III", "Rocky II"
    const bool two_names = i > 1 && is_name(before) &&
                           ((passage.joined(i - 2) && is_name(passage.text(i - 2))) ||
                            (passage.joined_by_stop(i - 2) && passage.raw(i - 2).size() == 1));
    if (token.size() < 2 || *number > 30 || !is_name(before)) return false;
    if (token == "MD" || token == "DC" || token == "CD" || token == "CC") return false;
    const bool person = two_names && (token == "II" || token == "III" || token == "IV");
    return say_as(passage, i,
                  person ? "the " + ordinal(digits, language) : cardinal(*number, language),
                  ending);
}

// "Part iii", "page xii": small letters only behind what counts its parts.
bool say_small_roman(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    if (raw.find_first_not_of("ivxlc") != std::string_view::npos || i == 0 ||
        !passage.adjacent(i - 1))
        return false;
    static constexpr auto pages = std::to_array<std::string_view>(
        {"clause", "item", "p", "page", "pages", "paragraph", "pp"});
    const std::string before = passage.folded(i - 1);
    if (!is_one_of(before, headings) && !is_one_of(before, pages)) return false;
    if (raw.size() == 1 && passage.joined(i)) return false;
    const std::optional<int> number = roman(ascii::upper(raw));
    if (!number || raw == "c" || raw == "l") return false;
    passage.say(i, cardinal(*number, passage.language()));
    return true;
}

} // namespace say
