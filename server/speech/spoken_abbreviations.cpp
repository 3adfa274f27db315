// Abbreviations said in full, by what stands around them: "Dr. Hill" and "Hill Dr.", "St. Ives" and
// "Main St.", "No. 5" and "No.", "25 sept.", "e.g.".
#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace say {
namespace {

// When an abbreviation is one: with a stop behind it or without, or only before a name or a figure.
// A state stands behind the comma of its place ("Portland, Ore."), an edition behind its number, a
// square behind its name, "v." between two words.
enum class When {
    always,
    stop,
    before_name,
    before_figure,
    behind_name,
    behind_place,
    behind_figure,
    between
};

struct Abbreviation {
    std::string_view sign; // folded, without its last stop
    std::string_view words;
    When when = When::stop;
};

constexpr auto abbreviations = std::to_array<Abbreviation>({
    {"a.k.a", "also known as", When::always},
    {"adm", "admiral"},
    {"aka", "also known as", When::always},
    {"ala", "alabama", When::behind_place},
    {"amb", "ambassador"},
    {"approx", "approximately", When::always},
    {"apr", "april"},
    {"apt", "apartment", When::before_figure},
    {"ariz", "arizona", When::behind_place},
    {"art", "article", When::before_figure},
    {"assn", "association", When::always},
    {"asst", "assistant", When::always},
    {"atty", "attorney", When::before_name},
    {"aug", "august"},
    {"ave", "avenue"},
    {"avg", "average", When::always},
    {"bldg", "building", When::always},
    {"blvd", "boulevard", When::always},
    {"brig", "brigadier"},
    {"bros", "brothers"},
    {"c", "circa", When::before_figure},
    {"ca", "circa", When::before_figure},
    {"calif", "california", When::behind_place},
    {"capt", "captain", When::always},
    {"cf", "compare"},
    {"ch", "chapter", When::before_figure},
    {"chap", "chapter", When::before_figure},
    {"chs", "chapters", When::before_figure},
    {"cir", "circle", When::behind_name},
    {"cmdr", "commander", When::always},
    {"co", "company"},
    {"col", "colonel", When::before_name},
    {"colo", "colorado", When::behind_place},
    {"conn", "connecticut", When::behind_place},
    {"corp", "corporation"},
    {"cpl", "corporal", When::always},
    {"ct", "court"},
    {"dec", "december"},
    {"dept", "department", When::always},
    {"dir", "director"},
    {"dist", "district"},
    {"drs", "doctors", When::before_name},
    {"e.g", "for example", When::always},
    {"ed", "edition", When::behind_figure},
    {"eg", "for example", When::always},
    {"ep", "episode", When::before_figure},
    {"eq", "equation", When::before_figure},
    {"eqs", "equations", When::before_figure},
    {"esp", "especially"},
    {"esq", "esquire"},
    {"est", "established", When::before_figure},
    {"etc", "etcetera", When::always},
    {"ex", "example", When::before_figure},
    {"excl", "excluding"},
    {"ext", "extension", When::before_figure},
    {"feb", "february"},
    {"fig", "figure", When::before_figure},
    {"figs", "figures", When::before_figure},
    {"fl", "floor", When::before_figure},
    {"fla", "florida", When::behind_place},
    {"fr", "father", When::before_name},
    {"fri", "friday"},
    {"ft", "fort", When::before_name},
    {"gen", "general", When::before_name},
    {"gov", "governor", When::before_name},
    {"govt", "government", When::always},
    {"hon", "honorable", When::before_name},
    {"hwy", "highway", When::always},
    {"i.e", "that is", When::always},
    {"ie", "that is", When::always},
    {"inc", "incorporated"},
    {"incl", "including"},
    {"ind", "indiana", When::behind_place},
    {"insp", "inspector"},
    {"intl", "international", When::always},
    {"jan", "january"},
    {"jr", "junior", When::always},
    {"jul", "july"},
    {"jun", "june"},
    {"kan", "kansas", When::behind_place},
    {"ky", "kentucky", When::behind_place},
    {"ln", "lane"},
    {"lt", "lieutenant", When::before_name},
    {"ltd", "limited", When::always},
    {"maj", "major", When::before_name},
    {"mass", "massachusetts", When::behind_place},
    {"max", "maximum", When::before_figure},
    {"messrs", "messieurs", When::always},
    {"mfg", "manufacturing", When::always},
    {"mgr", "manager", When::always},
    {"mich", "michigan", When::behind_place},
    {"min", "minimum", When::before_figure},
    {"minn", "minnesota", When::behind_place},
    {"misc", "miscellaneous", When::always},
    {"miss", "mississippi", When::behind_place},
    {"mk", "mark", When::before_figure},
    {"mlle", "mademoiselle", When::always},
    {"mme", "madame", When::always},
    {"mon", "monday"},
    {"mr", "mister", When::always},
    {"mrs", "missus", When::always},
    {"msgr", "monsignor", When::always},
    {"mt", "mount", When::before_name},
    {"mtn", "mountain", When::always},
    {"mts", "mountains"},
    {"mx", "mix", When::before_name},
    {"neb", "nebraska", When::behind_place},
    {"nev", "nevada", When::behind_place},
    {"no", "number", When::before_figure},
    {"nos", "numbers", When::before_figure},
    {"nov", "november"},
    {"n°", "number", When::always},
    {"nº", "number", When::always},
    {"oct", "october"},
    {"okla", "oklahoma", When::behind_place},
    {"ore", "oregon", When::behind_place},
    {"orig", "originally"},
    {"p", "page", When::before_figure},
    {"pa", "pennsylvania", When::behind_place},
    {"par", "paragraph", When::before_figure},
    {"para", "paragraph", When::before_figure},
    {"paras", "paragraphs", When::before_figure},
    {"pg", "page", When::before_figure},
    {"pkwy", "parkway", When::always},
    {"pl", "place", When::behind_name},
    {"pp", "pages", When::before_figure},
    {"pres", "president", When::before_name},
    {"prof", "professor", When::before_name},
    {"profs", "professors", When::before_name},
    {"pt", "part", When::before_figure},
    {"pvt", "private", When::before_name},
    {"rd", "road"},
    {"rep", "representative", When::before_name},
    {"reps", "representatives", When::before_name},
    {"rev", "reverend", When::before_name},
    {"rm", "room", When::before_figure},
    {"rt", "route", When::before_figure},
    {"rte", "route", When::before_figure},
    {"sat", "saturday", When::before_name},
    {"sec", "section", When::before_figure},
    {"sect", "section", When::before_figure},
    {"sen", "senator", When::before_name},
    {"sens", "senators", When::before_name},
    {"sep", "september"},
    {"sept", "september", When::always},
    {"sgt", "sergeant", When::always},
    {"spp", "species", When::always},
    {"sq", "square", When::behind_name},
    {"sr", "senior"},
    {"ste", "suite", When::before_figure},
    {"sts", "saints", When::before_name},
    {"sun", "sunday", When::before_name},
    {"supt", "superintendent", When::always},
    {"tel", "telephone", When::before_figure},
    {"tenn", "tennessee", When::behind_place},
    {"ter", "terrace", When::behind_name},
    {"tex", "texas", When::behind_place},
    {"thu", "thursday"},
    {"thur", "thursday"},
    {"thurs", "thursday"},
    {"tue", "tuesday"},
    {"tues", "tuesday"},
    {"univ", "university", When::always},
    {"v", "versus", When::between},
    {"va", "virginia", When::behind_place},
    {"ver", "version", When::before_figure},
    {"viz", "namely"},
    {"vol", "volume", When::before_figure},
    {"vols", "volumes", When::before_figure},
    {"vs", "versus", When::always},
    {"vt", "vermont", When::behind_place},
    {"vv", "verses", When::before_figure},
    {"wash", "washington", When::behind_place},
    {"wed", "wednesday", When::before_name},
});

constexpr bool is_sorted_by_sign() {
    return std::is_sorted(
        abbreviations.begin(), abbreviations.end(),
        [](const Abbreviation& a, const Abbreviation& b) { return a.sign < b.sign; });
}
static_assert(is_sorted_by_sign());

// For each first letter the lengths that occur, as bits: most words need no search.
constexpr auto lengths = [] {
    std::array<std::uint32_t, 26> bits{};
    for (const Abbreviation& entry : abbreviations) {
        bits[static_cast<std::size_t>(entry.sign[0] - 'a')] |= 1U << entry.sign.size();
    }
    bits['s' - 'a'] |= 1U << 2U; // "st"
    bits['d' - 'a'] |= 1U << 2U; // "dr"
    return bits;
}();

const Abbreviation* find(std::string_view folded) {
    const auto* found = std::lower_bound(
        abbreviations.begin(), abbreviations.end(), folded,
        [](const Abbreviation& entry, std::string_view sign) { return entry.sign < sign; });
    return found == abbreviations.end() || found->sign != folded ? nullptr : found;
}

bool is_name(std::string_view text) {
    return !text.empty() && ascii::is_upper(text[0]);
}

bool before_name(const Passage& passage, std::size_t i) {
    return passage.adjacent(i) && is_name(passage.raw(i + 1));
}

bool before_figure(const Passage& passage, std::size_t i) {
    // "Tel: 020 7946 0958"
    if (passage.folded(i) == "tel" && passage.between(i).find(':') != std::string_view::npos)
        return ascii::is_digit((passage.text(i + 1) + "x")[0]) || passage.text(i + 1)[0] == '+';
    if (!passage.adjacent(i)) return false;
    const std::string next = passage.text(i + 1);
    if (next.empty()) return false;
    // Words of their own: "a par 4", "we make art 5 days a week".
    static constexpr auto words =
        std::to_array<std::string_view>({"apt", "art", "ex", "par", "para", "sec"});
    const std::string folded = passage.folded(i);
    const bool word = is_one_of(folded, words);
    if (word && !passage.joined_by_stop(i) && (folded == "par" || !is_name(passage.raw(i))))
        return false;
    if (ascii::is_digit(next[0])) return true;
    const bool roman = next.find_first_not_of("IVXLC") == std::string::npos;
    return roman && next != "I" && (passage.joined_by_stop(i) || passage.folded(i) == "mk");
}

bool behind_name(const Passage& passage, std::size_t i) {
    if (!passage.follows(i)) return false;
    const std::string before = passage.text(i - 1);
    const bool number = before.ends_with("th") || before.ends_with("st") ||
                        before.ends_with("nd") || before.ends_with("rd");
    if (number && ascii::is_digit(before[0])) return true;
    return is_name(before) && before.size() > 1 && !is_function_word(ascii::lower(before));
}

// "Mount St. Helens", "Port St. Lucie": the name goes on.
bool behind_place_opener(const Passage& passage, std::size_t i) {
    static constexpr auto openers = std::to_array<std::string_view>({
        "bay",
        "cape",
        "east",
        "fort",
        "ft",
        "lake",
        "mount",
        "mt",
        "new",
        "north",
        "old",
        "point",
        "port",
        "south",
        "west",
    });
    return passage.follows(i) && is_one_of(passage.folded(i - 1), openers);
}

// "St" and "Dr" before a name and behind one. Between two names both could be meant.
bool say_saint_or_street(Passage& passage, std::size_t i, std::string_view folded) {
    const bool saint = folded == "st";
    // "TL;DR"
    const std::string_view raw = passage.raw(i);
    const bool capitals = std::all_of(raw.begin(), raw.end(), ascii::is_upper);
    if (capitals && !passage.stop_behind(i) && !passage.shouts() && !behind_name(passage, i))
        return false;
    const std::string_view front = saint ? "saint" : "doctor";
    const std::string_view back = saint ? "street" : "drive";
    const bool before = before_name(passage, i);
    const bool behind = behind_name(passage, i) && !behind_place_opener(passage, i);
    if (!before && !behind) {
        // "ask the Dr."; "st" alone is no word either
        if (!passage.stop_behind(i) && !(is_name(passage.raw(i)) && !saint)) return false;
        passage.say(i, saint ? back : front);
        return true;
    }
    if (!behind) {
        passage.say(i, front);
        return true;
    }
    // "Main St. Mira": a name before decides, unless nothing but that name says so.
    const bool ends_here = !before;
    if (!ends_here && !saint) {
        passage.say(i, front);
    } else if (ends_here) {
        passage.say(i, back);
    } else {
        passage.say(i, back, {std::string(front)});
    }
    return true;
}

// "St.-Germain", "St-Denis": a place, whose name goes on.
bool say_saint_in_name(Passage& passage, std::size_t i) {
    const std::string text = passage.text(i);
    const std::string_view stopped = "St.-";
    const std::string_view plain = "St-";
    const bool with_stop = text.starts_with(stopped);
    if (!with_stop && !text.starts_with(plain)) return false;
    const std::string rest = text.substr(with_stop ? stopped.size() : plain.size());
    if (rest.size() < 3 || !ascii::is_upper(rest[0]) || !ascii::is_lower(rest[1])) return false;
    passage.say(i, "saint " + unicode::fold(rest));
    return true;
}

// UK practice leaves the stop out; these are no words of their own.
bool is_title_without_stop(std::string_view sign) {
    return sign == "mt" || sign == "lt" || sign == "prof" || sign == "pvt" || sign == "maj";
}

// "on Sat.", "every Wed": a day, where a sentence could not go on with the ordinary word.
bool is_day_named(const Passage& passage, std::size_t i, std::string_view sign) {
    static constexpr auto cues =
        std::to_array<std::string_view>({"every", "last", "next", "on", "this", "until"});
    if (sign != "sat" && sign != "sun" && sign != "wed") return false;
    if (!is_name(passage.raw(i)) || !passage.follows(i)) return false;
    if (sign == "sun" && !passage.stop_behind(i)) return false;
    return is_one_of(passage.folded(i - 1), cues);
}

bool is_behind_ordinal(const Passage& passage, std::size_t i) {
    if (!passage.follows(i)) return false;
    const std::string before = passage.folded(i - 1);
    return (ascii::is_digit(before[0]) && ascii::is_letter(before.back())) || before == "revised" ||
           before == "first" || before == "second" || before == "third";
}

// "Sec. of State", "Rt. Hon. Hill", "Pt. Reyes": another word than before a figure.
bool say_other_office(Passage& passage, std::size_t i, std::string_view folded) {
    if (!is_name(passage.raw(i)) || !passage.adjacent(i)) return false;
    const std::string next = passage.folded(i + 1);
    if (folded == "sec" && passage.joined_by_stop(i) && next == "of") {
        passage.say(i, "secretary");
        return true;
    }
    if (folded == "rt" && next == "hon") {
        passage.say(i, "right");
        passage.say(i + 1, passage.is_uk() ? "honourable" : "honorable");
        return true;
    }
    const bool place = folded == "pt" && passage.joined_by_stop(i) && is_name(passage.raw(i + 1)) &&
                       !before_figure(passage, i);
    if (place) passage.say(i, "point");
    return place;
}

bool applies(const Passage& passage, std::size_t i, const Abbreviation& entry) {
    switch (entry.when) {
    case When::always: return true;
    case When::stop: return passage.stop_behind(i);
    case When::before_name:
        if (is_day_named(passage, i, entry.sign)) return true;
        if (!is_name(passage.raw(i)) || !before_name(passage, i)) return false;
        return passage.joined_by_stop(i) || is_title_without_stop(entry.sign);
    case When::before_figure:
        if (entry.sign == "fl" && passage.stop_behind(i) && is_behind_ordinal(passage, i))
            return true; // "3rd fl."
        return before_figure(passage, i);
    case When::behind_figure: return passage.stop_behind(i) && is_behind_ordinal(passage, i);
    case When::behind_name:
        return passage.stop_behind(i) && is_name(passage.raw(i)) && behind_name(passage, i);
    case When::between:
        return passage.raw(i) == entry.sign && i > 0 && passage.adjacent(i - 1) &&
               passage.joined_by_stop(i) && !before_figure(passage, i);
    case When::behind_place:
        return i > 0 && passage.stop_behind(i) && is_name(passage.raw(i)) &&
               passage.joined_by_comma(i - 1) && is_name(passage.raw(i - 1));
    }
    return false;
}

} // namespace

bool is_abbreviation(std::string_view folded) {
    if (folded.size() > 16) return false;
    const auto letter = static_cast<std::size_t>(folded.empty() ? 0 : folded[0] - 'a');
    if (letter < lengths.size() && (lengths[letter] >> folded.size() & 1U) == 0) return false;
    return folded == "st" || folded == "dr" || find(folded) != nullptr;
}

bool say_glued_abbreviation(Passage& passage, std::size_t i) {
    const std::string token = passage.folded(i);
    const std::size_t dot = token.find('.');
    if (dot == std::string::npos || dot + 1 == token.size()) return false;
    const Abbreviation* entry = find(std::string_view(token).substr(0, dot));
    if (entry == nullptr || entry->when != When::before_figure) return false;
    const std::string_view behind = std::string_view(token).substr(dot + 1);
    std::string words(entry->words);
    if (const std::optional<FigureRange> range = read_range(behind)) {
        if (!range->from.is_bare() || !range->to.is_bare()) return false;
        append_words(words, number_words(range->from, passage.language()));
        append_words(words, "to");
        append_words(words, number_words(range->to, passage.language()));
    } else {
        const std::optional<Figure> figure = read_figure(behind);
        if (!figure || !figure->is_bare()) return false;
        const bool dated = entry->words == "circa" || entry->words == "established";
        const bool is_year = dated && figure->whole.size() == 4 && figure->fraction.empty();
        append_words(words, is_year ? year(to_int(figure->whole).value_or(0), passage.language())
                                    : number_words(*figure, passage.language()));
    }
    passage.say(i, words);
    return true;
}

// "our No1 bun", "Nº5": no nobelium.
bool say_glued_number(Passage& passage, std::size_t i) {
    std::string_view rest = passage.raw(i);
    bool sign = false;
    for (const std::string_view no : {"No", "Nº", "N°", "№", "nº", "n°"}) {
        if (!sign && rest.starts_with(no)) {
            rest.remove_prefix(no.size());
            sign = true;
        }
    }
    const std::optional<int> number = to_int(rest);
    if (!sign || !number || rest.size() > 4 || rest[0] == '0') return false;
    passage.say(i, "number " + cardinal(*number, passage.language()));
    return true;
}

bool say_abbreviation(Passage& passage, std::size_t i) {
    const std::string folded = passage.folded(i);
    // "The no. of limpets is 5."
    if (folded == "no" && passage.joined_by_stop(i) && passage.folded(i + 1) == "of") {
        passage.say(i, "number");
        return true;
    }
    if (folded == "st" || folded == "dr") return say_saint_or_street(passage, i, folded);
    if (say_saint_in_name(passage, i)) return true;
    const Abbreviation* entry = find(folded);
    if (entry == nullptr) return false;
    // "IE", "CO", "SEC" are initials.
    const std::string_view raw = passage.raw(i);
    const bool capitals = raw.size() > 1 && std::all_of(raw.begin(), raw.end(), ascii::is_upper);
    const bool two_letters = folded == "eg" || folded == "ie";
    if (capitals && (entry->when != When::always || two_letters) && !passage.shouts()) return false;
    if (say_other_office(passage, i, folded)) return true;
    if (folded == "c" && passage.stop_behind(i) && is_behind_ordinal(passage, i)) {
        passage.say(i, "century"); // "the 19th c."
        return true;
    }
    if (folded == "est" && before_figure(passage, i) && passage.text(i + 1).size() != 4) {
        passage.say(i, "estimated");
        return true;
    }
    // Street words that a name precedes.
    if (entry->when == When::stop && behind_name(passage, i)) {
        const std::string_view street = street_words(folded);
        if (!street.empty()) {
            passage.say(i, street);
            return true;
        }
    }
    if (!applies(passage, i, *entry)) return false;
    passage.say(i, entry->words);
    return true;
}

} // namespace say
