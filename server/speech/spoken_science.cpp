// Chemical formulas ("H₂SO₄", "Na+") and raised figures ("10⁶", "x⁴"): symbols said by their
// letters, subscripts as numbers, powers in words. Symbols of the elements are those of IUPAC.
#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

// Symbols of one letter, then of two, from memory.
constexpr std::string_view single_symbols = "BCFHIKNOPSUVWY";
constexpr std::string_view double_symbols =
    "AcAgAlAmArAsAtAuBaBeBhBiBkBrCaCdCeCfClCmCnCoCrCsCuDbDsDyErEsEuFeFlFmFrGaGdGeHeHfHgHoHsInIrKr"
    "LaLiLrLuLvMcMdMgMnMoMtNaNbNdNeNhNiNoNpOgOsPaPbPdPmPoPrPtPuRaRbReRfRgRhRnRuSbScSeSgSiSmSnSrTa"
    "TbTcTeThTiTlTmTsXeYbZnZr";

bool is_double_symbol(std::string_view pair) {
    for (std::size_t at = 0; at < double_symbols.size(); at += 2) {
        if (double_symbols.substr(at, 2) == pair) return true;
    }
    return false;
}

struct Formula {
    std::string words;
    std::size_t symbols = 0;
    std::size_t figures = 0;
    bool charged = false;
};

std::size_t symbol_size(std::string_view text) {
    if (text.size() > 1 && ascii::is_lower(text[1]))
        return is_double_symbol(text.substr(0, 2)) ? 2 : 0;
    return single_symbols.find(text[0]) != std::string_view::npos ? 1 : 0;
}

// Nothing if `token` is not made of symbols, figures and at most one charge at its end.
std::optional<Formula> read_formula(std::string_view token, Language language) {
    Formula formula;
    bool behind_symbol = false; // neighbours are one run of letters: "s o four" is ".so four"
    while (!token.empty()) {
        if (ascii::is_digit(token[0])) {
            const auto end = std::find_if_not(token.begin(), token.end(), ascii::is_digit);
            const auto size = static_cast<std::size_t>(end - token.begin());
            if (size > 2 || formula.symbols == 0 || token[0] == '0') return std::nullopt;
            append_words(formula.words, cardinal(token.substr(0, size), language));
            behind_symbol = false;
            token.remove_prefix(size);
            ++formula.figures;
        } else if (token == "+" || token == "-") {
            append_words(formula.words, token == "+" ? "plus" : "minus");
            formula.charged = true;
            token = {};
        } else if (ascii::is_upper(token[0])) {
            const std::size_t size = symbol_size(token);
            if (size == 0) return std::nullopt;
            if (!behind_symbol) append_words(formula.words, ".");
            formula.words += ascii::lower(token.substr(0, size));
            behind_symbol = true;
            token.remove_prefix(size);
            ++formula.symbols;
        } else {
            return std::nullopt;
        }
    }
    return formula;
}

// Formulas that are written without figures.
bool is_known_formula(std::string_view token) {
    static constexpr auto known = std::to_array<std::string_view>(
        {"CaO", "CuO", "FeO", "HBr", "HCl", "HCN", "KBr", "KCl", "KOH", "LiCl", "MgO", "NaBr",
         "NaCl", "NaF", "NaOH", "ZnO", "ZnS"});
    return is_one_of(token, known);
}

bool has_lowered_figure(std::string_view raw) {
    for (std::size_t at = 0; at < raw.size();) {
        const unicode::CodePoint point = unicode::decode(raw, at);
        at += point.size;
        if (point.value >= 0x2080 && point.value <= 0x2089) return true;
    }
    return false;
}

} // namespace

char raised_sign(char32_t c) {
    switch (c) {
    case U'¹': return '1';
    case U'²': return '2';
    case U'³': return '3';
    case U'⁻': return '-';
    default:
        return c == 0x2070 || (c >= 0x2074 && c <= 0x2079) ? static_cast<char>('0' + (c - 0x2070))
                                                           : '\0';
    }
}

// "Ca²⁺", "SO₄²⁻", "Na⁺": the charge is said behind the symbols.
bool say_ion(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    const bool plus = raw.ends_with("⁺");
    if (!plus && !raw.ends_with("⁻")) return false;
    std::string_view rest = raw.substr(0, raw.size() - std::string_view("⁺").size());
    std::string charge = plus ? "plus" : "minus";
    for (const auto& [sign, words] :
         {std::pair{"¹", "one "}, std::pair{"²", "two "}, std::pair{"³", "three "}}) {
        if (!rest.ends_with(sign)) continue;
        rest.remove_suffix(std::string_view(sign).size());
        charge.insert(0, words);
        break;
    }
    // The lowered figures are plain in the passage's own form of the word.
    std::string plain;
    for (std::size_t at = 0; at < rest.size();) {
        const unicode::CodePoint point = unicode::decode(rest, at);
        at += point.size;
        const bool lowered = point.value >= 0x2080 && point.value <= 0x2089;
        if (!lowered && point.value >= 0x80) return false;
        plain += static_cast<char>(lowered ? '0' + (point.value - 0x2080) : point.value);
    }
    const std::optional<Formula> formula = read_formula(plain, passage.language());
    if (!formula || formula->symbols == 0 || formula->charged) return false;
    passage.say(i, formula->words + ' ' + charge);
    return true;
}

namespace {

// The elements whose isotopes people speak of by name, of IUPAC's table; from memory.
std::string element_name(std::string_view symbol, Language language) {
    struct Element {
        std::string_view symbol;
        std::string_view name;
    };
    static constexpr auto elements = std::to_array<Element>({
        {"Ag", "silver"},   {"Am", "americium"}, {"Ar", "argon"},     {"Au", "gold"},
        {"B", "boron"},     {"Ba", "barium"},    {"Be", "beryllium"}, {"Bi", "bismuth"},
        {"C", "carbon"},    {"Ca", "calcium"},   {"Cl", "chlorine"},  {"Co", "cobalt"},
        {"Cr", "chromium"}, {"Cs", "cesium"},    {"Cu", "copper"},    {"F", "fluorine"},
        {"Fe", "iron"},     {"H", "hydrogen"},   {"He", "helium"},    {"Hg", "mercury"},
        {"I", "iodine"},    {"Ir", "iridium"},   {"K", "potassium"},  {"Kr", "krypton"},
        {"Li", "lithium"},  {"Mg", "magnesium"}, {"Mn", "manganese"}, {"N", "nitrogen"},
        {"Na", "sodium"},   {"Ni", "nickel"},    {"O", "oxygen"},     {"P", "phosphorus"},
        {"Pb", "lead"},     {"Po", "polonium"},  {"Pu", "plutonium"}, {"Ra", "radium"},
        {"Rn", "radon"},    {"S", "sulfur"},     {"Si", "silicon"},   {"Sr", "strontium"},
        {"Th", "thorium"},  {"U", "uranium"},    {"Xe", "xenon"},     {"Zn", "zinc"},
    });
    if (symbol == "Al") return language == Language::en_gb ? "aluminium" : "aluminum";
    for (const Element& element : elements) {
        if (element.symbol == symbol) return std::string(element.name);
    }
    return "." + ascii::lower(symbol);
}

} // namespace

// "¹⁴C", "²³⁵U": "carbon fourteen", "uranium two thirty five".
bool say_nuclide(Passage& passage, std::size_t i) {
    std::string_view rest = passage.raw(i);
    std::string mass;
    bool lowered = false;
    while (!rest.empty() && ascii::is_high(rest[0])) {
        const unicode::CodePoint point = unicode::decode(rest, 0);
        const char digit = raised_sign(point.value);
        const bool below = point.value >= 0x2080 && point.value <= 0x2089; // "²³⁵₉₂U"
        if (!below && (lowered || digit < '0')) return false;
        lowered = lowered || below;
        if (!below) mass += digit;
        rest.remove_prefix(point.size);
    }
    if (mass.empty() || mass.size() > 3 || mass[0] == '0' || rest.empty() ||
        !ascii::is_upper(rest[0]))
        return false;
    const std::size_t size = symbol_size(rest);
    if (size == 0) return false;
    const Language language = passage.language();
    const std::string number = in_pairs(mass, language);
    const std::string_view behind = rest.substr(size);
    if (behind.empty() || behind[0] == '-') {
        std::string words = element_name(rest.substr(0, size), language) + ' ' + number;
        std::string more = ascii::lower(behind); // "-dating"
        std::replace(more.begin(), more.end(), '-', ' ');
        if (!std::all_of(more.begin(), more.end(),
                         [](char c) { return ascii::is_letter(c) || c == ' '; }))
            return false;
        passage.say(i, words + more);
        return true;
    }
    std::string plain(passage.text(i)); // "¹⁴CO₂"
    plain.erase(0, plain.find(rest[0]));
    const std::optional<Formula> formula = read_formula(plain, language);
    if (!formula) return false;
    passage.say(i, number + ' ' + formula->words);
    return true;
}

// "CO2", "Ca²+" and "NaCl", but not "B2", which is said alike, nor a word with a figure behind it.
bool say_formula(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    if (raw.size() < 2 || raw.size() > 24 || !ascii::is_upper(raw[0])) return false;
    if (say_ion(passage, i)) return true;
    const std::string token = passage.text(i);
    if (token == "WW1" || token == "WW2") return false; // wars, not tungsten
    if (is_known_formula(token)) {
        passage.say(i, read_formula(token, passage.language())->words);
        return true;
    }
    const bool last_is_charge = token.ends_with('+');
    const bool figure = std::any_of(token.begin(), token.end(), ascii::is_digit);
    if (!figure && !last_is_charge) return false;
    const std::optional<Formula> formula = read_formula(token, passage.language());
    if (!formula) return false;
    const bool small = std::any_of(token.begin(), token.end(), ascii::is_lower);
    const bool ion = formula->charged && last_is_charge && formula->symbols == 1 && small;
    const bool compound = formula->figures > 0 && formula->symbols > 1;
    if (!ion && !compound && !has_lowered_figure(raw)) return false;
    passage.say(i, formula->words);
    return true;
}

// "10⁶", "x⁴", "10⁻³": one number or letter with raised figures behind it.
bool say_power(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    if (raw.size() < 3 || std::none_of(raw.begin(), raw.end(), ascii::is_high)) return false;
    const auto high = std::find_if(raw.begin(), raw.end(), ascii::is_high);
    const std::string_view base = raw.substr(0, static_cast<std::size_t>(high - raw.begin()));
    const bool number =
        !base.empty() && std::all_of(base.begin(), base.end(), ascii::is_digit) && base[0] != '0';
    const bool letter = base.size() == 1 && ascii::is_lower(base[0]);
    if (!number && !letter) return false;
    if (raw.substr(base.size()) == "ⁿ") {
        passage.say(i, (number ? cardinal(base, passage.language()) : "." + std::string(base)) +
                           " to the power of .n");
        return true;
    }
    std::string raised;
    for (std::size_t at = base.size(); at < raw.size();) {
        const unicode::CodePoint point = unicode::decode(raw, at);
        at += point.size;
        const char sign = raised_sign(point.value);
        if (sign == '\0' || (sign == '-' && !raised.empty())) return false;
        raised += sign;
    }
    const Language language = passage.language();
    const std::string power = power_words(raised, language);
    if (power.empty()) return false;
    std::string words = number ? cardinal(base, language) : "." + std::string(base);
    append_words(words, power);
    passage.say(i, words);
    return true;
}

} // namespace say
