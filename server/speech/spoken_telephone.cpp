// Telephone numbers, internet addresses of four numbers, and other figures said digit by digit.
// In the UK a digit that repeats is "double" or "triple" and the nought is "oh".
#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

std::string said_digits(std::string_view digits, Language language) {
    return language == Language::en_gb ? digits_doubled(digits) : digit_by_digit(digits);
}

std::vector<std::string_view> split_groups(std::string_view token) {
    std::vector<std::string_view> groups;
    std::size_t begin = 0;
    for (std::size_t at = 0; at <= token.size(); ++at) {
        if (at < token.size() && token[at] != '-' && token[at] != '.' && token[at] != ')') continue;
        if (at > begin || at == token.size() || token[at] != '-')
            groups.push_back(token.substr(begin, at - begin));
        begin = at + 1;
    }
    return groups;
}

bool all_digits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), ascii::is_digit);
}

bool has_sizes(const std::vector<std::string_view>& groups,
               std::initializer_list<std::size_t> sizes) {
    if (groups.size() != sizes.size()) return false;
    return std::equal(
        groups.begin(), groups.end(), sizes.begin(),
        [](std::string_view group, std::size_t size) { return group.size() == size; });
}

// 1-800 and its kin are said "one eight hundred".
bool is_free_call(std::string_view group) {
    return group == "800" || group == "900";
}

std::string group_words(const std::vector<std::string_view>& groups, std::size_t at,
                        Language language) {
    if (is_free_call(groups[at]) && at <= 1) return cardinal(groups[at], Language::en_us);
    return said_digits(groups[at], language);
}

std::string joined_groups(const std::vector<std::string_view>& groups, Language language) {
    std::string words;
    for (std::size_t at = 0; at < groups.size(); ++at)
        append_words(words, group_words(groups, at, language));
    return words;
}

// "192.168.0.1"
bool say_internet_address(Passage& passage, std::size_t i,
                          const std::vector<std::string_view>& groups, std::string_view behind) {
    const bool fits =
        groups.size() == 4 && std::all_of(groups.begin(), groups.end(), [](std::string_view group) {
            return all_digits(group) && group.size() <= 3;
        });
    if (!fits) return false;
    std::string words;
    for (const std::string_view group : groups) {
        if (!words.empty()) words += " dot ";
        words += digit_by_digit(group);
    }
    append_words(words, behind);
    passage.say(i, words);
    return true;
}

// "555-1234 x12", "ext. 890"
bool say_extension(Passage& passage, std::size_t i, std::string_view token) {
    if (i == 0 || !passage.adjacent(i - 1)) return false;
    const std::string before = passage.folded(i - 1);
    const bool numbered = before.size() >= 4 && ascii::is_digit(before.back());
    const bool called = before == "call" && token.size() > 3;
    const bool x =
        token.size() > 1 && token[0] == 'x' && all_digits(token.substr(1)) && (numbered || called);
    if (x) {
        const std::string_view digits = token.substr(1);
        passage.say(i, "extension " + (digits.size() < 3 ? cardinal(digits, passage.language())
                                                         : digit_by_digit(digits)));
        return true;
    }
    if ((before != "ext" && before != "extension") || !all_digits(token) || token.size() < 3)
        return false;
    passage.say(i, said_digits(token, passage.language()));
    return true;
}

// "978-3-16-148410-0": too many groups of digits for anything but a number of its own kind.
bool say_long_number(Passage& passage, std::size_t i, const std::vector<std::string_view>& groups) {
    std::size_t digits = 0;
    for (const std::string_view group : groups)
        digits += group.size();
    if (groups.size() < 4 || digits < 9 || !std::all_of(groups.begin(), groups.end(), all_digits))
        return false;
    std::string words;
    for (const std::string_view group : groups)
        append_words(words, digit_by_digit(group));
    passage.say(i, words);
    return true;
}

// "1-800-GO-2-HAUL": letters stand for digits and are read as words.
bool say_vanity(Passage& passage, std::size_t i, const std::vector<std::string_view>& groups) {
    const std::size_t code = !groups.empty() && groups[0] == "1" ? 1 : 0;
    if (groups.size() < code + 2 || groups[code].size() != 3 || groups[code][0] != '8')
        return false;
    bool lettered = false;
    for (const std::string_view group : groups)
        lettered |= !group.empty() && ascii::is_upper(group[0]);
    if (code == 0 && !lettered) return false;
    std::string words = code == 1 ? "one" : "";
    append_words(words, group_words(groups, code, Language::en_us));
    for (std::size_t at = code + 1; at < groups.size(); ++at) {
        const bool letters = std::all_of(groups[at].begin(), groups[at].end(), ascii::is_letter);
        if (!letters && !all_digits(groups[at])) return false;
        append_words(words, letters ? ascii::lower(groups[at]) : digit_by_digit(groups[at]));
    }
    passage.say(i, words);
    return true;
}

bool is_telephone(const std::vector<std::string_view>& groups, std::string_view token, bool plus) {
    if (!std::all_of(groups.begin(), groups.end(), all_digits)) return false;
    if (has_sizes(groups, {3, 3, 4}) || has_sizes(groups, {3, 2, 4})) return true;
    if (has_sizes(groups, {3, 4})) return token.find('.') == std::string_view::npos;
    if (groups.size() == 4 && groups[0].size() <= 3 && groups[1].size() == 3 &&
        groups[2].size() == 3 && groups[3].size() == 4) {
        return true;
    }
    std::size_t digits = 0;
    for (const std::string_view group : groups)
        digits += group.size();
    return plus && digits >= 7 && (groups.size() >= 2 || digits >= 10);
}

// The words from i on that are digits alone with blanks between, as "+44 20 7946 0958".
std::size_t digit_run(const Passage& passage, std::size_t i) {
    std::size_t last = i;
    while (last + 1 < passage.size() && last < i + 5 && passage.joined(last)) {
        const std::string next = passage.text(last + 1);
        const std::vector<std::string_view> groups = split_groups(next);
        if (!std::all_of(groups.begin(), groups.end(), all_digits)) break;
        ++last;
    }
    return last;
}

std::size_t count_digits(const Passage& passage, std::size_t first, std::size_t last) {
    std::size_t digits = 0;
    for (std::size_t i = first; i <= last; ++i) {
        const std::string text = passage.text(i);
        digits +=
            static_cast<std::size_t>(std::count_if(text.begin(), text.end(), ascii::is_digit));
    }
    return digits;
}

bool has_call_cue(const Passage& passage, std::size_t i) {
    static constexpr auto cues = std::to_array<std::string_view>({
        "at",
        "call",
        "called",
        "calling",
        "dial",
        "dialed",
        "fax",
        "number",
        "on",
        "phone",
        "ring",
        "tel",
        "telephone",
        "text",
    });
    if (i == 0) return false;
    // "Tel.: 555 0142"
    std::string_view gap = passage.between(i - 1);
    if (gap.starts_with('.')) gap.remove_prefix(1);
    if (gap.starts_with(':')) gap.remove_prefix(1);
    return gap.find_first_not_of(' ') == std::string_view::npos &&
           is_one_of(passage.folded(i - 1), cues);
}

// "PIN 4821", "the code is 4821", "order no. 12345": known by its figures, not counted.
bool is_secret_or_serial(const Passage& passage, std::size_t i, std::string_view token) {
    static constexpr auto names = std::to_array<std::string_view>(
        {"code", "id", "invoice", "passcode", "password", "pin", "sku"});
    static constexpr auto numbered = std::to_array<std::string_view>(
        {"account", "case", "invoice", "order", "reference", "serial", "ticket"});
    const auto has = [](const auto& words, const std::string& word) {
        return is_one_of(word, words);
    };
    if (token.size() < 4 || !all_digits(token) || i == 0) return false;
    const std::string next = passage.joined(i) ? passage.folded(i + 1) : std::string{};
    if (next == "of" || next == "people" || (next.size() > 3 && next.ends_with('s'))) return false;
    const std::string before = passage.folded(i - 1);
    if (passage.joined(i - 1) && has(names, before)) return true;
    if (i < 2 || !passage.joined(i - 2)) return false;
    const std::string first = passage.folded(i - 2);
    if (before == "is") return passage.joined(i - 1) && has(names, first);
    return (before == "no" || before == "number") && passage.adjacent(i - 1) &&
           has(numbered, first);
}

// "911" alone, unless a word before it counts.
bool is_known_call(const Passage& passage, std::size_t i) {
    static constexpr auto counting = std::to_array<std::string_view>({
        "about",
        "all",
        "almost",
        "around",
        "exactly",
        "just",
        "nearly",
        "of",
        "only",
        "over",
        "porsche",
        "than",
        "total",
        "under",
        "was",
        "were",
    });
    const std::string before = passage.follows(i) ? passage.folded(i - 1) : std::string{};
    if (is_one_of(before, counting)) return false;
    const std::string next = passage.joined(i) ? passage.folded(i + 1) : std::string{};
    return next != "of" && (next.empty() || is_function_word(next));
}

// "call 999", "a 111 call", "the 911 operators"; "111 calls" are counted.
bool is_emergency(const Passage& passage, std::size_t i, std::string_view token) {
    static constexpr auto numbers =
        std::to_array<std::string_view>({"101", "111", "112", "911", "999"});
    static constexpr auto articles =
        std::to_array<std::string_view>({"a", "every", "her", "his", "my", "the", "their", "your"});
    if (!is_one_of(token, numbers)) return false;
    if (has_call_cue(passage, i)) return true;
    // "or 999 in an emergency"
    if (passage.joined(i) && passage.joined(i + 1) && passage.joined(i + 2) &&
        passage.folded(i + 1) == "in" && passage.folded(i + 3) == "emergency")
        return true;
    const std::string before = passage.follows(i) ? passage.folded(i - 1) : std::string{};
    const std::string next = passage.joined(i) ? passage.folded(i + 1) : std::string{};
    const bool one =
        next == "call" || next == "caller" || next == "dispatcher" || next == "operator";
    if (one && is_one_of(before, articles)) return true;
    return token == "911" && !passage.is_uk() && is_known_call(passage, i);
}

// "text 60777", "text TIDE to 60777": a short code is read figure by figure.
bool is_text_code(const Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() < 5 || token.size() > 6 || !passage.follows(i)) return false;
    if (passage.folded(i - 1) == "text") return true;
    if (passage.folded(i - 1) != "to") return false;
    for (std::size_t back = 2; back <= 5 && back <= i; ++back) {
        if (passage.folded(i - back) == "text") return true;
    }
    return false;
}

void say_digit_words(Passage& passage, std::size_t first, std::size_t last) {
    const bool free = passage.text(first) == "1" && is_free_call(passage.text(first + 1));
    for (std::size_t i = first; i <= last; ++i) {
        const std::string text = passage.text(i);
        std::string words = text.starts_with('+') ? "plus" : "";
        append_words(words, free && i == first + 1 ? cardinal(text, Language::en_us)
                                                   : said_digits(text, passage.language()));
        passage.say(i, words);
    }
}

// Groups parted by blanks: with a plus, a leading nought, or a word that says "call".
bool say_spaced(Passage& passage, std::size_t i, std::string_view token) {
    const std::string_view digits = token.starts_with('+') ? token.substr(1) : token;
    if (!all_digits(digits)) return false;
    const std::size_t last = digit_run(passage, i);
    const std::size_t count = count_digits(passage, i, last);
    const bool cue = has_call_cue(passage, i);
    if (last == i) {
        if (!is_emergency(passage, i, token) && !is_text_code(passage, i, token) &&
            !is_secret_or_serial(passage, i, token) && !(cue && count == 7))
            return false;
        passage.say(i, said_digits(digits, passage.language()));
        return true;
    }
    const bool national = token.starts_with('0') && token.size() >= 3 && count >= 9 && count <= 11;
    const bool international = (token.starts_with('+') && count >= 8 && count <= 15) ||
                               (token.starts_with("00") && count >= 11 && count <= 17);
    const std::string second = passage.text(i + 1);
    const bool written = !token.starts_with('0') && count == (token == "1" ? 11U : 10U) &&
                         last == i + (token == "1" ? 3 : 2) && passage.text(last).size() == 4 &&
                         second.size() == 3 && (token.size() == 3 || token == "1");
    const bool free_call = token == "0800" && count >= 7;
    const bool local =
        written || free_call || (cue && (count == 7 || count == 10) && token.size() == 3);
    if (!national && !international && !local) return false;
    say_digit_words(passage, i, last);
    return true;
}

// "(123) 123-5678": the brackets are punctuation, so the area code is a word of its own.
bool say_area_code(Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() < 2 || token.size() > 5 || !all_digits(token) ||
        !passage.between(i).starts_with(')'))
        return false;
    const std::string next = passage.text(i + 1);
    const std::vector<std::string_view> groups = split_groups(next);
    const bool local =
        has_sizes(groups, {3, 4}) && std::all_of(groups.begin(), groups.end(), all_digits);
    const bool spaced =
        all_digits(next) && count_digits(passage, i + 1, digit_run(passage, i + 1)) >= 6;
    if (!local && !spaced) return false;
    passage.say(i, said_digits(token, passage.language()));
    say_digit_words(passage, i + 1, local ? i + 1 : digit_run(passage, i + 1));
    return true;
}

// "+44 (0)1632 960123": the nought in brackets is not dialled behind the country (ITU-T E.123, 7.2,
// from memory), so it is not said.
bool say_bracketed_nought(Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() < 2 || token.size() > 4 || !token.starts_with('+') ||
        !all_digits(token.substr(1)))
        return false;
    const std::string second = passage.text(i + 1);
    const std::size_t open = second.find("0)");
    std::size_t first = i + 2;
    if (second == "0" && passage.between(i).ends_with('(') &&
        passage.between(i + 1).starts_with(')')) {
        if (!all_digits(passage.text(i + 2))) return false;
    } else if (open <= 1 && all_digits(std::string_view(second).substr(open + 2))) {
        first = i + 1;
    } else {
        return false;
    }
    const std::size_t last = digit_run(passage, first);
    const std::size_t count = count_digits(passage, i, last);
    if (count < 8 || count > 16) return false;
    const Language language = passage.language();
    passage.say(i, "plus " + said_digits(token.substr(1), language));
    passage.say(i + 1, first == i + 1
                           ? said_digits(std::string_view(second).substr(open + 2), language)
                           : std::string{});
    for (std::size_t at = i + 2; at <= last; ++at)
        passage.say(at, joined_groups(split_groups(passage.text(at)), language));
    return true;
}

// "555-LIMPET"
bool say_lettered_number(Passage& passage, std::size_t i,
                         const std::vector<std::string_view>& groups) {
    if (groups.size() != 2 || groups[0].size() != 3 || !all_digits(groups[0]) ||
        groups[1].size() < 4 || groups[1].size() > 7 ||
        !std::all_of(groups[1].begin(), groups[1].end(), ascii::is_upper) ||
        !has_call_cue(passage, i))
        return false;
    passage.say(i, said_digits(groups[0], passage.language()) + ' ' + ascii::lower(groups[1]));
    return true;
}

// "01632-960123", "01632/960123", "0800-001-234": the code of a place and the number there.
bool is_number_with_code(const std::vector<std::string_view>& groups) {
    if (groups.size() < 2 || !std::all_of(groups.begin(), groups.end(), all_digits)) return false;
    std::size_t digits = 0;
    for (const std::string_view group : groups)
        digits += group.size();
    return groups[0][0] == '0' && groups[0].size() >= 3 && groups[0].size() <= 6 && digits >= 9 &&
           digits <= 12;
}

// "192.168.1.1:8080", "10.0.0.0/24"
bool say_internet_address_and_more(Passage& passage, std::size_t i, std::string_view body) {
    if (body.find('-') != std::string_view::npos) return false;
    const std::size_t sign = body.find_first_of(":/");
    std::string behind;
    if (sign != std::string_view::npos) {
        const std::string_view more = body.substr(sign + 1);
        if (!all_digits(more)) return false;
        behind = body[sign] == ':' ? "colon " + digit_by_digit(more)
                                   : "slash " + cardinal(more, passage.language());
    }
    return say_internet_address(passage, i, split_groups(body.substr(0, sign)), behind);
}

} // namespace

bool say_telephone(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (say_extension(passage, i, token) || say_area_code(passage, i, token) ||
        say_bracketed_nought(passage, i, token) || say_spaced(passage, i, token))
        return true;
    std::string_view body = token;
    const bool plus = body.starts_with('+');
    if (plus) body.remove_prefix(1);
    if (body.starts_with('(')) body.remove_prefix(1);
    std::string hyphened(body);
    std::replace(hyphened.begin(), hyphened.end(), '/', '-');
    if (const std::vector<std::string_view> groups = split_groups(hyphened);
        is_number_with_code(groups)) {
        passage.say(i, joined_groups(groups, passage.language()));
        return true;
    }
    const std::vector<std::string_view> groups = split_groups(body);
    if (groups.size() < 2 && !plus) return false;
    if (say_internet_address_and_more(passage, i, body)) return true;
    if (say_vanity(passage, i, groups) || say_lettered_number(passage, i, groups)) return true;
    if (!is_telephone(groups, body, plus))
        return body.find('-') != std::string_view::npos && say_long_number(passage, i, groups);
    std::string words = plus ? "plus" : "";
    append_words(words, joined_groups(groups, passage.language()));
    passage.say(i, words);
    return true;
}

} // namespace say
