// Names of units, alone or behind a prefix: "kilopascals", "millivolts", "becquerel". The names and
// prefixes are those of the SI Brochure (BIPM, 9th edition 2019 with the prefixes of 2022: tables
// 2, 4, 7 and 8); kibi and so on of IEC 80000-13; amp, byte, bit, calorie, gramme, mole and molar
// common practice, no source. The sounds are those of the dictionary where it has the word, else
// from memory.
#include "speech/derive.h"

#include <algorithm>
#include <iterator>
#include <string_view>

namespace say {
namespace {

struct Name {
    std::string_view letters;
    std::string_view sounds;
};

// The stress stays on the prefix, as in the dictionary's "kilowatt" and "megahertz".
constexpr Name prefixes[] = {
    {"atto", "AE1 T OW0"},         {"centi", "S EH1 N T AH0"},  {"deca", "D EH1 K AH0"},
    {"deci", "D EH1 S AH0"},       {"deka", "D EH1 K AH0"},     {"exa", "EH1 K S AH0"},
    {"exbi", "EH1 K S B IY0"},     {"femto", "F EH1 M T OW0"},  {"gibi", "G IH1 B IY0"},
    {"giga", "G IH1 G AH0"},       {"hecto", "HH EH1 K T AH0"}, {"kibi", "K IH1 B IY0"},
    {"kilo", "K IH1 L AH0"},       {"mebi", "M EH1 B IY0"},     {"mega", "M EH1 G AH0"},
    {"micro", "M AY1 K R OW0"},    {"milli", "M IH1 L AH0"},    {"nano", "N AE1 N OW0"},
    {"pebi", "P EH1 B IY0"},       {"peta", "P EH1 T AH0"},     {"pico", "P IY1 K OW0"},
    {"quecto", "K W EH1 K T OW0"}, {"quetta", "K W EH1 T AH0"}, {"ronna", "R AA1 N AH0"},
    {"ronto", "R AA1 N T OW0"},    {"tebi", "T EH1 B IY0"},     {"tera", "T EH1 R AH0"},
    {"yocto", "Y AA1 K T OW0"},    {"yotta", "Y AA1 T AH0"},    {"zepto", "Z EH1 P T OW0"},
    {"zetta", "Z EH1 T AH0"},
};

constexpr Name units[] = {
    {"amp", "AE1 M P"},
    {"ampere", "AE1 M P IH2 R"},
    {"bar", "B AA1 R"},
    {"becquerel", "B EH2 K ER0 EH1 L"},
    {"bit", "B IH1 T"},
    {"byte", "B AY1 T"},
    {"calorie", "K AE1 L ER0 IY0"},
    {"candela", "K AE2 N D EH1 L AH0"},
    {"coulomb", "K UW1 L AA0 M"},
    {"dalton", "D AO1 L T AH0 N"},
    {"electronvolt", "IH0 L EH1 K T R AA0 N V OW2 L T"},
    {"farad", "F EH1 R AH0 D"},
    {"gram", "G R AE1 M"},
    {"gramme", "G R AE1 M"},
    {"gray", "G R EY1"},
    {"henry", "HH EH1 N R IY0"},
    {"hertz", "HH ER1 T S"},
    {"joule", "JH UW1 L"},
    {"katal", "K AE1 T AH0 L"},
    {"kelvin", "K EH1 L V AH0 N"},
    {"liter", "L IY1 T ER0"},
    {"litre", "L IY1 T ER0"},
    {"lumen", "L UW1 M AH0 N"},
    {"lux", "L AH1 K S"},
    {"meter", "M IY1 T ER0"},
    {"metre", "M IY1 T ER0"},
    {"molar", "M OW1 L ER0"},
    {"mole", "M OW1 L"},
    {"newton", "N UW1 T AH0 N"},
    {"ohm", "OW1 M"},
    {"pascal", "P AE0 S K AE1 L"},
    {"radian", "R EY1 D IY0 AH0 N"},
    {"second", "S EH1 K AH0 N D"},
    {"siemens", "S IY1 M AH0 N Z"},
    {"sievert", "S IY1 V ER0 T"},
    {"steradian", "S T ER0 EY1 D IY0 AH0 N"},
    {"tesla", "T EH1 S L AH0"},
    {"tonne", "T AH1 N"},
    {"volt", "V OW1 L T"},
    {"watt", "W AA1 T"},
    {"weber", "V EY1 B ER0"},
};

constexpr bool is_before(const Name& a, const Name& b) {
    return a.letters < b.letters;
}
static_assert(std::is_sorted(std::begin(units), std::end(units), is_before));

std::optional<Phones> unit_alone(std::string_view word) {
    const auto found =
        std::lower_bound(std::begin(units), std::end(units), Name{word, {}}, is_before);
    if (found == std::end(units) || found->letters != word) return std::nullopt;
    return from_arpabet(found->sounds);
}

std::optional<Phones> unit_of_any_number(std::string_view word) {
    if (auto phones = unit_alone(word)) return phones;
    if (!word.ends_with('s')) return std::nullopt;
    auto phones = word == "henries" ? unit_alone("henry") // NIST SP 811, section 9.7
                                    : unit_alone(word.substr(0, word.size() - 1));
    if (phones) append_s(*phones);
    return phones;
}

} // namespace

std::optional<Phones> as_unit(std::string_view word) {
    if (auto phones = unit_of_any_number(word)) return phones;
    for (const Name& prefix : prefixes) {
        if (!word.starts_with(prefix.letters)) continue;
        const auto unit = unit_of_any_number(word.substr(prefix.letters.size()));
        if (!unit) continue;
        Phones phones = from_arpabet(prefix.sounds).value_or(Phones());
        for (Phone phone : *unit) {
            if (phone.stress == 1) phone.stress = 2;
            phones.push_back(phone);
        }
        return phones;
    }
    return std::nullopt;
}

} // namespace say
