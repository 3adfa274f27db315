// Words in capitals: said letter by letter (FBI), as a word (NASA), or an ordinary word that is
// merely in capitals. Also letters with stops (U.S.), single letters, and their plurals.
#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/passage.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

// Said as a word although no dictionary of ordinary words has it, or has another word of that
// spelling (AIDS). Common practice, no source.
constexpr auto spoken_as_words = std::to_array<std::string_view>({
    "AIDS",    "ANOVA",  "ASCII",  "ASEAN",   "BAFTA",  "BASIC", "BREXIT",   "CAPTCHA", "CERN",
    "COBOL",   "CORS",   "COVID",  "DARPA",   "EBITDA", "EPCOT", "FEMA",     "FIFA",    "FOMO",
    "FORTRAN", "GATT",   "GIF",    "HAMAS",   "HUD",    "IKEA",  "INTERPOL", "ISIS",    "JPEG",
    "JSON",    "LAN",    "LASER",  "LATAM",   "LEGO",   "LIDAR", "MENSA",    "MERS",    "NAFTA",
    "NASA",    "NASDAQ", "NASCAR", "NATO",    "NIMBY",  "NORAD", "NUMA",     "OPEC",    "OSHA",
    "PAWS",    "PETA",   "PIN",    "PNG",     "POTUS",  "RADAR", "RAM",      "ROM",     "SARS",
    "SCOTUS",  "SCUBA",  "SEATO",  "SIM",     "SONAR",  "STEM",  "SWAT",     "TIFF",    "UNESCO",
    "UNICEF",  "WAN",    "WAP",    "WYSIWYG", "YAML",   "YOLO",  "ZIP",
});

// Letters although they would make a word, or look like one. Common practice, no source.
constexpr auto spoken_as_letters = std::to_array<std::string_view>({
    "AA",    "AAA",  "AARP",    "ABBA",  "AC",   "ACLU", "AD",    "ADHD", "AI",   "AKA",  "AM",
    "AMD",   "AP",   "APA",     "API",   "ASAP", "ASMR", "ATM",   "AV",   "AWS",  "BA",   "BBC",
    "BC",    "BCE",  "BMI",     "BMX",   "BTW",  "CAD",  "CCTV",  "CD",   "CE",   "CEO",  "CFO",
    "CIA",   "CNN",  "CO",      "CPA",   "CPU",  "CSI",  "CT",    "CTO",  "CV",   "DA",   "DC",
    "DIY",   "DJ",   "DNA",     "DOA",   "DVD",  "EA",   "ECG",   "EFL",  "EKG",  "EMT",  "EOD",
    "EOY",   "EPA",  "ER",      "ESP",   "ESPN", "ETA",  "ETF",   "EU",   "EV",   "FAA",  "FAQ",
    "FBI",   "FDA",  "FTSE",    "FYI",   "GB",   "GDP",  "GI",    "GMO",  "GOP",  "GPA",  "GPS",
    "GPU",   "HIV",  "HR",      "IBM",   "ICBM", "ICU",  "ICYMI", "ID",   "IDE",  "IEA",  "IEEE",
    "IMF",   "IMHO", "IMO",     "IOC",   "IOT",  "IOU",  "IP",    "IPO",  "IQ",   "IRA",  "IRS",
    "ISBN",  "ISO",  "ISP",     "ITV",   "IUCN", "IV",   "IVF",   "KO",   "KPI",  "LA",   "LAX",
    "LED",   "LGBT", "LGBTQIA", "LOL",   "LSD",  "MA",   "MBA",   "MIA",  "MIT",  "MLA",  "MOT",
    "MP",    "MRI",  "MVP",     "NAACP", "NBA",  "NBC",  "NDA",   "NGO",  "NHS",  "NPR",  "NRA",
    "NSA",   "NYSE", "NYU",     "OAS",   "OBE",  "OCD",  "OECD",  "OEM",  "OK",   "OMG",  "OS",
    "PA",    "PC",   "PE",      "PG",    "PHP",  "PM",   "POS",   "POW",  "PR",   "PS",   "PTA",
    "PTO",   "QA",   "QED",     "RAF",   "RIP",  "RNA",  "ROI",   "RV",   "SAS",  "SAT",  "SEC",
    "SEO",   "SME",  "SOS",     "SUV",   "TA",   "TBA",  "TBC",   "TBD",  "TBH",  "TLC",  "TSA",
    "TV",    "UAE",  "UAV",     "UCLA",  "UEFA", "UFC",  "UFO",   "UI",   "UK",   "UN",   "UNDP",
    "UNHCR", "UPS",  "URI",     "URL",   "US",   "USA",  "USAF",  "USB",  "USDA", "USPS", "USSR",
    "UTC",   "UV",   "UX",      "VAT",   "VIP",  "VP",   "VR",    "WC",   "WTO",  "XML",
});

// Without a vowel, and yet no letters are named.
constexpr auto interjections = std::to_array<std::string_view>({
    "BRR", "BRRR", "DR",   "GRR",  "GRRR", "HM", "HMM", "HMMM", "MM", "MMM", "MR", "MRS",
    "MS",  "MT",   "PFFT", "PSST", "PST",  "SH", "SHH", "SHHH", "ST", "TSK", "VS", "ZZZ",
});

// Readers differ on these; the first reading is the commoner. Common practice, no source.
struct Doubtful {
    std::string_view sign;
    std::string_view other;
};
constexpr auto doubtful = std::to_array<Doubtful>({
    {"ASAP", "ay sap"},
    {"FAQ", "fack"},
    {"FTSE", "footsie"},
    {"GIF", "jif"},
    {"GUI", "gooey"},
    {"PNG", "P N G"},
    {"SCSI", "scuzzy"},
    {"SQL", "sequel"},
});

static_assert(std::is_sorted(spoken_as_letters.begin(), spoken_as_letters.end()));

bool contains(std::string_view vowels, char c) {
    return vowels.find(c) != std::string_view::npos;
}

// "Y" is a vowel except at the beginning.
bool is_vowel_at(std::string_view word, std::size_t at) {
    return contains("AEIOU", word[at]) || (word[at] == 'Y' && at > 0);
}

std::size_t group_end(std::string_view word, std::size_t at) {
    const bool vowel = is_vowel_at(word, at);
    while (at < word.size() && is_vowel_at(word, at) == vowel)
        ++at;
    return at;
}

// Consonants that can open a word.
bool is_onset(std::string_view consonants) {
    static constexpr auto onsets = std::to_array<std::string_view>({
        "BL",  "BR",  "CH", "CL",  "CR",  "DR", "FL", "FR", "GL", "GR", "PH",
        "PL",  "PR",  "SC", "SCH", "SCR", "SH", "SK", "SL", "SM", "SN", "SP",
        "SPL", "SPR", "ST", "STR", "SW",  "TH", "TR", "TW", "WH", "WR",
    });
    return consonants.size() == 1 || is_one_of(consonants, onsets);
}

// Consonants that can close a word.
bool is_coda(std::string_view consonants) {
    static constexpr auto codas = std::to_array<std::string_view>({
        "CH", "CK", "CT", "FT", "LD", "LL", "LT", "MP", "NCE", "ND", "NG", "NK", "NS", "NT", "PS",
        "PT", "RC", "RD", "RK", "RM", "RN", "RS", "RT", "SH",  "SK", "SP", "SS", "ST", "TH",
    });
    return consonants.size() == 1 || is_one_of(consonants, codas);
}

// Could English say it as a word? Four letters or more, groups of two vowels at most, and no
// cluster of consonants that words do not begin, end or join with.
bool is_pronounceable(std::string_view word) {
    if (word.size() < 4) return false;
    std::size_t vowels = 0;
    for (std::size_t at = 0; at < word.size();) {
        const std::size_t end = group_end(word, at);
        const std::string_view group = word.substr(at, end - at);
        const bool vowel = is_vowel_at(word, at);
        if (vowel && (group.size() > 2 || group == "AA" || group == "II" || group == "UU"))
            return false;
        if (vowel) ++vowels;
        if (!vowel && at == 0 && !is_onset(group)) return false;
        if (!vowel && at > 0 && end == word.size() && !is_coda(group)) return false;
        if (!vowel && at > 0 && end < word.size() && group.size() > 2) return false;
        at = end;
    }
    return vowels >= 2 ||
           (vowels == 1 && word.size() == 4 && !is_vowel_at(word, 0) && !is_vowel_at(word, 3));
}

bool same_sounds(const Phones& a, const Phones& b) {
    return a.size() == b.size() &&
           std::equal(a.begin(), a.end(), b.begin(),
                      [](const Phone& x, const Phone& y) { return x.sound == y.sound; });
}

// The dictionary has initials too, spelt out ("fbi").
bool is_spelt_in_lexicon(std::string_view folded) {
    Phones letters;
    for (const Phones& letter : spell_out(folded))
        letters.insert(letters.end(), letter.begin(), letter.end());
    return same_sounds(pronounce(folded).phones, letters);
}

bool is_capitals(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), ascii::is_upper);
}

// "U.S", "Ph.D", "a.m": letters and stops in turn, the last stop being punctuation.
bool is_dotted(std::string_view text) {
    if (text.find('.') == std::string_view::npos || text.size() > 16) return false;
    std::size_t run = 0;
    for (const char c : text) {
        if (c == '.') {
            if (run == 0) return false;
            run = 0;
        } else if (!ascii::is_letter(c) || ++run > 2) {
            return false;
        }
    }
    return run > 0;
}

struct Core {
    std::string letters;
    std::string ending; // "s" or "'s"
};

// Initials without their plural or possessive: "CEOs", "FBI's", "U.S.'s".
Core core_of(std::string_view text) {
    Core core;
    std::string_view rest = text;
    if (rest.ends_with("'s")) {
        core.ending = "'s";
        rest.remove_suffix(2);
    } else if (rest.size() > 2 && rest.ends_with('s') &&
               (is_capitals(rest.substr(0, rest.size() - 1)) ||
                (rest.ends_with(".s") && ascii::is_upper(rest[rest.size() - 3])))) {
        core.ending = "s";
        rest.remove_suffix(1);
    } else if (rest.ends_with('\'')) {
        rest.remove_suffix(1);
    }
    if (rest.ends_with('.')) rest.remove_suffix(1);
    core.letters = rest;
    return core;
}

// The dictionary knows many plurals of initials; for the rest an apostrophe keeps the ending apart
// from the letters.
std::string with_ending(const Core& core, std::string_view folded) {
    std::string word(folded);
    if (core.ending.empty()) return "." + word;
    std::string plural = word + "s";
    if (core.ending == "s" && word.size() > 1 && is_spelt_in_lexicon(word) &&
        pronounce(plural).known == Known::lexicon &&
        !is_one_of(ascii::upper(plural), spoken_as_letters))
        return plural; // but "GPs" is no GPS
    return "." + word + "'s";
}

void say_and_ask(Passage& passage, std::size_t i, const Core& core, const std::string& words) {
    const auto* other = std::find_if(doubtful.begin(), doubtful.end(), [&](const Doubtful& entry) {
        return entry.sign == core.letters;
    });
    if (other == doubtful.end() || !core.ending.empty()) {
        passage.say(i, words);
    } else {
        passage.say(i, words, {std::string(other->other)});
    }
}

void say_letters(Passage& passage, std::size_t i, const Core& core) {
    say_and_ask(passage, i, core, with_ending(core, ascii::lower(core.letters)));
}

// "AT&T", "R&D", "Q&A"
bool say_ampersand(Passage& passage, std::size_t i, std::string_view text) {
    const std::size_t at = text.find('&');
    if (at == std::string_view::npos || at == 0 || at + 1 == text.size()) return false;
    Core last = core_of(text.substr(at + 1));
    if (last.letters.size() == 2 && last.letters[1] == 's')
        last = {last.letters.substr(0, 1), "s"}; // "Q&As"
    const std::string_view first = text.substr(0, at);
    if (!is_capitals(first) || !is_capitals(last.letters) || first.size() > 4 ||
        last.letters.size() > 4)
        return false;
    passage.say(i, "." + ascii::lower(first) + " and " +
                       with_ending(last, ascii::lower(last.letters)));
    return true;
}

// "UK-based", "non-EU", "X-ray" if the dictionary lacks it: a part in capitals is said by letters.
bool say_hyphened(Passage& passage, std::size_t i, std::string_view text) {
    if (text.find('-') == std::string_view::npos || in_lexicon(unicode::fold(text))) return false;
    std::string words;
    bool letters = false;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find('-', begin), text.size());
        const std::string_view part = text.substr(begin, end - begin);
        begin = end + 1;
        Core core = core_of(part);
        if (is_dotted(core.letters)) std::erase(core.letters, '.'); // "U.S.-based"
        const bool spelt = part == "A" || (core.letters.size() > 1 && is_capitals(core.letters) &&
                                           capitals_kind(core.letters) == Capitals::letters);
        letters |= spelt;
        append_words(words,
                     spelt ? with_ending(core, ascii::lower(core.letters)) : unicode::fold(part));
    }
    if (!letters || passage.shouts()) return false;
    passage.say(i, words);
    return true;
}

// A letter alone is its name; "A" is the article unless a noun before it counts with letters.
bool say_single(Passage& passage, std::size_t i, char letter) {
    static constexpr auto counted = std::to_array<std::string_view>({
        "answer", "appendix", "block",    "building", "class",   "column",    "dorm",    "exhibit",
        "figure", "gate",     "grade",    "group",    "hall",    "hepatitis", "lot",     "option",
        "part",   "plan",     "platform", "point",    "room",    "row",       "section", "series",
        "side",   "team",     "terminal", "type",     "vitamin", "wing",      "zone",
    });
    if (letter == 'I' || letter == 'a' || letter == 'i') return false;
    if (letter == 'O' && !passage.stop_behind(i)) return false;
    if (letter == 'A') {
        const bool named = passage.follows(i) && is_one_of(passage.folded(i - 1), counted);
        if (!named && !passage.joined_by_stop(i)) return false;
    }
    passage.say(i, "." + std::string(1, ascii::lower(letter)));
    return true;
}

// Short words that are initials only behind an article or the like: "the WHO", "an IT team".
bool is_named(const Passage& passage, std::size_t i) {
    static constexpr auto articles = std::to_array<std::string_view>({
        "a",
        "an",
        "and",
        "at",
        "by",
        "her",
        "his",
        "in",
        "its",
        "my",
        "of",
        "our",
        "the",
        "their",
        "your",
    });
    return passage.follows(i) && is_one_of(passage.folded(i - 1), articles) &&
           !(is_capitals(passage.raw(i - 1)) && passage.raw(i - 1).size() > 1);
}

bool say_capitals(Passage& passage, std::size_t i, const Core& core) {
    if (core.letters == "IT" || core.letters == "WHO") {
        const bool article = is_named(passage, i);
        if (passage.shouts() || !article) return false;
        say_letters(passage, i, core);
        return true;
    }
    const Capitals kind = capitals_kind(core.letters);
    if (kind == Capitals::ordinary) return false;
    if (passage.shouts() && in_lexicon(ascii::lower(core.letters)) &&
        !is_spelt_in_lexicon(ascii::lower(core.letters))) {
        return false;
    }
    if (kind == Capitals::letters) {
        say_letters(passage, i, core);
    } else {
        say_and_ask(passage, i, core, ascii::lower(core.letters) + core.ending);
    }
    return true;
}

// "mRNA", "eSIM": a small letter before initials; "camelCase" where small letters meet capitals.
bool say_mixed_case(Passage& passage, std::size_t i, const Core& core) {
    const std::string& word = core.letters;
    if (word.size() < 3 || !std::all_of(word.begin(), word.end(), ascii::is_letter)) return false;
    const std::string_view rest = std::string_view(word).substr(1);
    if (ascii::is_lower(word[0]) && is_capitals(rest) && word != "iOS") {
        const std::string folded = ascii::lower(rest);
        if (capitals_kind(rest) == Capitals::letters) {
            passage.say(i, with_ending({word, core.ending}, ascii::lower(word)));
        } else {
            passage.say(i, "." + std::string(1, word[0]) + ' ' + folded + core.ending);
        }
        return true;
    }
    const std::string folded = ascii::lower(word);
    if (in_lexicon(folded) || is_capitals(word)) return false;
    std::string words;
    std::size_t begin = 0;
    std::size_t parts = 0;
    for (std::size_t at = 1; at <= word.size(); ++at) {
        if (at < word.size() && !(ascii::is_lower(word[at - 1]) && ascii::is_upper(word[at])))
            continue;
        const std::string part = folded.substr(begin, at - begin);
        if (part.size() == 1 && (begin > 0 || (part != "i" && part != "e"))) return false;
        if (part.size() == 2 && begin == 0 && part != "my" && part != "we" && part != "go")
            return false; // "McHugh", "DeVos"
        if (part.size() > 1 && !in_lexicon(part)) return false;
        const bool letters = part.size() == 1 ||
                             (is_capitals(word.substr(begin, at - begin)) &&
                              capitals_kind(word.substr(begin, at - begin)) == Capitals::letters);
        append_words(words, letters ? "." + part : part); // "macOS"
        begin = at;
        ++parts;
    }
    if (parts < 2) return false;
    passage.say(i, words + core.ending);
    return true;
}

// "YoY", "MoM", "y/y": one period against the last.
bool say_comparison(Passage& passage, std::size_t i, std::string_view text) {
    struct Period {
        std::string_view sign;
        std::string_view slashed;
        std::string_view name;
    };
    static constexpr auto periods = std::to_array<Period>({
        {"YoY", "y/y", "year"},
        {"QoQ", "q/q", "quarter"},
        {"MoM", "m/m", "month"},
        {"WoW", "w/w", "week"},
    });
    for (const Period& period : periods) {
        if (text != period.sign && text != period.slashed) continue;
        std::string words(period.name);
        append_words(words, passage.is_uk() ? "on" : "over");
        append_words(words, period.name);
        passage.say(i, words);
        return true;
    }
    return false;
}

} // namespace

bool say_small_initials(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    if (!std::all_of(raw.begin(), raw.end(), ascii::is_lower)) return false;
    const std::string capitals = ascii::upper(raw);
    if (!std::binary_search(spoken_as_letters.begin(), spoken_as_letters.end(), capitals) ||
        (in_lexicon(raw) && raw != "fyi")) // the dictionary says "for your information"
        return false;
    passage.say(i, "." + std::string(raw));
    return true;
}

Capitals capitals_kind(std::string_view word) {
    const std::string capitals = ascii::upper(word);
    if (!is_capitals(capitals)) return Capitals::ordinary;
    if (word.size() == 1)
        return word == "I" || word == "A" || word == "O" ? Capitals::ordinary : Capitals::letters;
    if (is_one_of(capitals, spoken_as_words)) return Capitals::word;
    if (is_one_of(capitals, spoken_as_letters)) return Capitals::letters;
    const std::string folded = ascii::lower(word);
    if (std::none_of(capitals.begin(), capitals.end(),
                     [](char c) { return contains("AEIOUY", c); })) {
        return is_one_of(capitals, interjections) ? Capitals::ordinary : Capitals::letters;
    }
    if (in_lexicon(folded))
        return is_spelt_in_lexicon(folded) ? Capitals::letters : Capitals::ordinary;
    if (word.size() > 6 || pronounce(folded).known == Known::lexicon) return Capitals::ordinary;
    return is_pronounceable(capitals) ? Capitals::word : Capitals::letters;
}

bool say_initials(Passage& passage, std::size_t i) {
    const std::string text = passage.text(i);
    if (text.size() == 1 && ascii::is_letter(text[0])) return say_single(passage, i, text[0]);
    if (say_comparison(passage, i, text)) return true;
    if (say_ampersand(passage, i, text) || say_hyphened(passage, i, text)) return true;
    const Core core = core_of(text);
    if (is_dotted(core.letters)) {
        std::string letters = core.letters;
        std::erase(letters, '.');
        say_letters(passage, i, {letters, core.ending});
        return true;
    }
    if (say_mixed_case(passage, i, core)) return true;
    if (core.letters == "PhDs") {
        say_letters(passage, i, {"PhD", "s"});
        return true;
    }
    if (core.letters == "PhD" || core.letters == "iOS" || core.letters == "TVs") {
        say_letters(passage, i, core);
        return true;
    }
    if (core.letters.size() == 1 && ascii::is_upper(core.letters[0]) && !core.ending.empty() &&
        core.letters != "I") {
        passage.say(i, "." + ascii::lower(core.letters) + "'s");
        return true;
    }
    return core.letters.size() > 1 && is_capitals(core.letters) && say_capitals(passage, i, core);
}

} // namespace say
