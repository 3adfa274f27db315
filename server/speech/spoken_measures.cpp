// Measures: figures with a unit behind them, glued or apart; percent, degrees, feet and inches.
// Units are those of the SI brochure and of US customary and imperial use.
#include "base/lists.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

// How freely a unit is recognised: `apart` also as a word behind a figure, `glued` only against it
// ("5m" but not "5 h"), as it is an ordinary word or letter too.
enum class Use { apart, glued };

struct Unit {
    std::string_view sign;
    std::string_view one;
    std::string_view many;
    Use use = Use::apart;
};

constexpr auto units = std::to_array<Unit>({
    {"%", "percent", "percent"},
    {"‰", "per mille", "per mille"},
    {"pct", "percent", "percent"},
    {"★", "star", "stars"},
    {"°", "degree", "degrees"},
    {"º", "degree", "degrees"},
    {"°C", "degree celsius", "degrees celsius"},
    {"°F", "degree fahrenheit", "degrees fahrenheit"},
    {"ºC", "degree celsius", "degrees celsius"},
    {"ºF", "degree fahrenheit", "degrees fahrenheit"},
    {"°N", "degree north", "degrees north"},
    {"°S", "degree south", "degrees south"},
    {"°E", "degree east", "degrees east"},
    {"°W", "degree west", "degrees west"},
    {"°K", "degree kelvin", "degrees kelvin"},
    {"℃", "degree celsius", "degrees celsius"},
    {"℉", "degree fahrenheit", "degrees fahrenheit"},
    // length
    {"nm", "nanometer", "nanometers"},
    {"µm", "micrometer", "micrometers"},
    {"μm", "micrometer", "micrometers"},
    {"mm", "millimeter", "millimeters"},
    {"cm", "centimeter", "centimeters"},
    {"dm", "decimeter", "decimeters"},
    {"m", "meter", "meters"},
    {"km", "kilometer", "kilometers"},
    {"kms", "kilometer", "kilometers"},
    {"in", "inch", "inches", Use::glued},
    {"ft", "foot", "feet"},
    {"yd", "yard", "yards"},
    {"yds", "yard", "yards"},
    {"mi", "mile", "miles"},
    {"nmi", "nautical mile", "nautical miles"},
    {"ly", "light year", "light years"},
    {"px", "pixel", "pixels"},
    {"pts", "point", "points"},
    {"pt", "point", "points", Use::glued},
    // area
    {"ha", "hectare", "hectares"},
    {"ac", "acre", "acres", Use::glued},
    {"sq", "square", "square"},
    {"cu", "cubic", "cubic"},
    {"sqft", "square foot", "square feet"},
    {"sqm", "square meter", "square meters"},
    // volume
    {"ml", "milliliter", "milliliters"},
    {"mL", "milliliter", "milliliters"},
    {"cl", "centiliter", "centiliters"},
    {"dl", "deciliter", "deciliters"},
    {"dL", "deciliter", "deciliters"},
    {"l", "liter", "liters"},
    {"L", "liter", "liters"},
    {"cc", ".cc", ".cc"},
    {"gal", "gallon", "gallons"},
    {"qt", "quart", "quarts"},
    {"tsp", "teaspoon", "teaspoons"},
    {"tbsp", "tablespoon", "tablespoons"},
    {"Tbsp", "tablespoon", "tablespoons"},
    {"tbs", "tablespoon", "tablespoons"},
    {"fl", "fluid", "fluid", Use::glued},
    {"bbl", "barrel", "barrels"},
    // mass
    {"ng", "nanogram", "nanograms"},
    {"µg", "microgram", "micrograms"},
    {"μg", "microgram", "micrograms"},
    {"mcg", "microgram", "micrograms"},
    {"mg", "milligram", "milligrams"},
    {"g", "gram", "grams"},
    {"kg", "kilogram", "kilograms"},
    {"kgs", "kilogram", "kilograms"},
    {"oz", "ounce", "ounces"},
    {"lb", "pound", "pounds"},
    {"lbs", "pound", "pounds"},
    // time
    {"ns", "nanosecond", "nanoseconds"},
    {"µs", "microsecond", "microseconds"},
    {"μs", "microsecond", "microseconds"},
    {"ms", "millisecond", "milliseconds"},
    {"s", "second", "seconds", Use::glued},
    {"sec", "second", "seconds"},
    {"secs", "second", "seconds"},
    {"min", "minute", "minutes"},
    {"mins", "minute", "minutes"},
    {"h", "hour", "hours", Use::glued},
    {"hr", "hour", "hours"},
    {"hrs", "hour", "hours"},
    {"wk", "week", "weeks"},
    {"wks", "week", "weeks"},
    {"mo", "month", "months", Use::glued},
    {"mos", "month", "months"},
    {"yr", "year", "years"},
    {"yrs", "year", "years"},
    // speed and rates
    {"mph", "mile per hour", "miles per hour"},
    {"kph", "kilometer per hour", "kilometers per hour"},
    {"kmh", "kilometer per hour", "kilometers per hour"},
    {"MPH", "mile per hour", "miles per hour"},
    {"kn", "knot", "knots"},
    {"kt", "knot", "knots"},
    {"kts", "knot", "knots"},
    {"mpg", "mile per gallon", "miles per gallon"},
    {"rpm", ".rpm", ".rpm"},
    {"bpm", "beat per minute", "beats per minute"},
    {"BPM", "beat per minute", "beats per minute"},
    {"wpm", "word per minute", "words per minute"},
    {"fps", "frame per second", "frames per second"},
    {"psi", ".psi", ".psi"},
    {"ppm", "part per million", "parts per million"},
    {"ppb", "part per billion", "parts per billion"},
    {"ppt", "part per thousand", "parts per thousand"},
    {"Ma", "million years", "million years"},
    {"dpi", "dot per inch", "dots per inch"},
    // physics
    {"Hz", "hertz", "hertz"},
    {"hz", "hertz", "hertz"},
    {"kHz", "kilohertz", "kilohertz"},
    {"khz", "kilohertz", "kilohertz"},
    {"MHz", "megahertz", "megahertz"},
    {"mhz", "megahertz", "megahertz"},
    {"GHz", "gigahertz", "gigahertz"},
    {"ghz", "gigahertz", "gigahertz"},
    {"THz", "terahertz", "terahertz"},
    {"V", "volt", "volts"},
    {"kV", "kilovolt", "kilovolts"},
    {"mV", "millivolt", "millivolts"},
    {"W", "watt", "watts"},
    {"mW", "milliwatt", "milliwatts"},
    {"kW", "kilowatt", "kilowatts"},
    {"MW", "megawatt", "megawatts"},
    {"GW", "gigawatt", "gigawatts"},
    {"Wh", "watt hour", "watt hours"},
    {"kWh", "kilowatt hour", "kilowatt hours"},
    {"kwh", "kilowatt hour", "kilowatt hours"},
    {"MWh", "megawatt hour", "megawatt hours"},
    {"GWh", "gigawatt hour", "gigawatt hours"},
    {"mA", "milliamp", "milliamps"},
    {"mAh", "milliamp hour", "milliamp hours"},
    {"Ah", "amp hour", "amp hours"},
    {"A", "amp", "amps", Use::glued},
    {"µA", "microamp", "microamps"},
    {"μA", "microamp", "microamps"},
    {"µF", "microfarad", "microfarads"},
    {"μF", "microfarad", "microfarads"},
    {"µV", "microvolt", "microvolts"},
    {"μV", "microvolt", "microvolts"},
    {"µW", "microwatt", "microwatts"},
    {"μW", "microwatt", "microwatts"},
    {"µl", "microliter", "microliters"},
    {"μl", "microliter", "microliters"},
    {"µL", "microliter", "microliters"},
    {"μL", "microliter", "microliters"},
    {"µSv", "microsievert", "microsieverts"},
    {"μSv", "microsievert", "microsieverts"},
    {"Ω", "ohm", "ohms"},
    {"kΩ", "kilohm", "kilohms"},
    {"MΩ", "megohm", "megohms"},
    {"J", "joule", "joules", Use::glued},
    {"kJ", "kilojoule", "kilojoules"},
    {"MJ", "megajoule", "megajoules"},
    {"cal", "calorie", "calories"},
    {"kcal", "kilocalorie", "kilocalories"},
    {"N", "newton", "newtons", Use::glued},
    {"kN", "kilonewton", "kilonewtons"},
    {"Nm", "newton meter", "newton meters"},
    {"Pa", "pascal", "pascals"},
    {"hPa", "hectopascal", "hectopascals"},
    {"kPa", "kilopascal", "kilopascals"},
    {"MPa", "megapascal", "megapascals"},
    {"GPa", "gigapascal", "gigapascals"},
    {"mbar", "millibar", "millibars"},
    {"mmHg", "millimeter of mercury", "millimeters of mercury"},
    {"atm", "atmosphere", "atmospheres"},
    {"dB", "decibel", "decibels"},
    {"db", "decibel", "decibels"},
    {"K", "kelvin", "kelvin", Use::glued},
    {"mol", "mole", "moles"},
    {"hp", "horsepower", "horsepower"},
    {"lm", "lumen", "lumens"},
    {"lx", "lux", "lux"},
    {"Sv", "sievert", "sieverts"},
    {"mSv", "millisievert", "millisieverts"},
    {"Bq", "becquerel", "becquerels"},
    {"eV", "electron volt", "electron volts"},
    // data
    {"kB", "kilobyte", "kilobytes"},
    {"KB", "kilobyte", "kilobytes"},
    {"MB", "megabyte", "megabytes"},
    {"mb", "megabyte", "megabytes"},
    {"GB", "gigabyte", "gigabytes"},
    {"gb", "gigabyte", "gigabytes"},
    {"TB", "terabyte", "terabytes"},
    {"tb", "terabyte", "terabytes"},
    {"PB", "petabyte", "petabytes"},
    {"KiB", "kibibyte", "kibibytes"},
    {"MiB", "mebibyte", "mebibytes"},
    {"GiB", "gibibyte", "gibibytes"},
    {"kbps", "kilobit per second", "kilobits per second"},
    {"Kbps", "kilobit per second", "kilobits per second"},
    {"Mbps", "megabit per second", "megabits per second"},
    {"mbps", "megabit per second", "megabits per second"},
    {"Gbps", "gigabit per second", "gigabits per second"},
    {"gbps", "gigabit per second", "gigabits per second"},
    {"Mb", "megabit", "megabits"},
    {"kbit", "kilobit", "kilobits"},
    {"Mbit", "megabit", "megabits"},
    {"Gbit", "gigabit", "gigabits"},
    {"Gb", "gigabit", "gigabits"},
    {"MP", "megapixel", "megapixels"},
});

const Unit* find_unit(std::string_view sign) {
    const auto* found = std::find_if(units.begin(), units.end(),
                                     [sign](const Unit& unit) { return unit.sign == sign; });
    return found == units.end() ? nullptr : found;
}

// "metre" and "litre" are UK spellings of the same sound.
std::string in_language(std::string_view name, Language language) {
    std::string words(name);
    if (language == Language::en_us) return words;
    for (const std::string_view american : {"meter", "liter"}) {
        const std::size_t at = words.find(american);
        if (at != std::string::npos) words.replace(at + 3, 2, "re");
    }
    return words;
}

// "m2", "m²" (raised digits are plain by now) and "m^2": the unit without its exponent, and
// "square" or "cubic".
std::string_view power_of(std::string_view& unit) {
    for (const std::string_view raised : {"²", "³"}) {
        if (unit.size() <= raised.size() || !unit.ends_with(raised)) continue;
        const std::string_view base = unit.substr(0, unit.size() - raised.size());
        if (find_unit(base) == nullptr) return {};
        unit = base;
        return raised == "²" ? "square" : "cubic";
    }
    if (unit.size() < 2) return {};
    const char exponent = unit.back();
    if (exponent != '2' && exponent != '3') return {};
    std::string_view base = unit.substr(0, unit.size() - 1);
    if (base.ends_with('^')) base.remove_suffix(1);
    if (base.ends_with("²") || !ascii::is_lower(base.back())) return {};
    const Unit* found = find_unit(base);
    if (found == nullptr) return {};
    unit = base;
    return exponent == '2' ? "square" : "cubic";
}

std::string single_unit(std::string_view unit, Number number, Language language) {
    const std::string_view power = power_of(unit);
    const Unit* found = find_unit(unit);
    if (found == nullptr) return {};
    std::string words(power);
    append_words(words, in_language(number == Number::plural ? found->many : found->one, language));
    return words;
}

bool is_word(std::string_view text) {
    return text.size() > 2 && std::all_of(text.begin(), text.end(), ascii::is_lower);
}

// "5st 4lb": stone, where no ordinal could be written so or pounds follow.
bool say_glued_stone(Passage& passage, std::size_t i, const Figure& figure) {
    if (figure.suffix != "st" || !figure.fraction.empty()) return false;
    const bool first = figure.whole.ends_with('1') && !figure.whole.ends_with("11");
    const std::string next = passage.joined(i) ? passage.folded(i + 1) : std::string{};
    const bool pounds = !next.empty() && ascii::is_digit(next[0]) &&
                        (next.ends_with("lb") || next.ends_with("lbs"));
    if (!pounds && (first || !passage.is_uk())) return false;
    passage.say(i, number_words(figure, passage.language()) + " stone");
    return true;
}

// "6ft2", "5ft10": so tall; "100ft2" is an area.
bool say_height(Passage& passage, std::size_t i, const Figure& figure) {
    const std::string_view feet = "ft";
    if (!figure.suffix.starts_with(feet) || !figure.fraction.empty()) return false;
    const std::string_view inches = std::string_view(figure.suffix).substr(feet.size());
    const int whole = to_int(figure.whole).value_or(0);
    if (whole < 3 || whole > 8 || to_int(inches).value_or(12) > 11) return false;
    passage.say(i, number_words(figure, passage.language()) + " foot " +
                       cardinal(inches, passage.language()));
    return true;
}

// 5'6" and 5'
bool say_feet(Passage& passage, std::size_t i, const Figure& figure) {
    const Language language = passage.language();
    if (say_height(passage, i, figure)) return true;
    if (!figure.suffix.starts_with('\'')) return false;
    std::string words = number_words(figure, language);
    const std::string rest = figure.suffix.substr(1);
    if (rest.empty()) {
        passage.say(i, words + (figure.is_one() ? " foot" : " feet"));
        return true;
    }
    const std::optional<Figure> inches = read_figure(rest);
    if (!inches) return false;
    // "6'2" without its sign is a height only where a body has it.
    const bool height = inches->suffix.empty() && figure.whole.size() == 1 && figure.whole > "2" &&
                        inches->whole.size() <= 2 && to_int(inches->whole).value_or(12) < 12;
    if (!height && inches->suffix != "\"" && inches->suffix != "''") return false;
    passage.say(i, words + " foot " + number_words(*inches, language));
    return true;
}

// A unit glued to the figure: "12kg", "5%", "20°C", "4.4x", "12\"".
std::string glued_unit(const Figure& figure, Number number, Language language) {
    if (figure.suffix == "\"") return number == Number::plural ? "inches" : "inch";
    if (figure.suffix == "'") return number == Number::plural ? "feet" : "foot";
    if (figure.suffix == "x" || figure.suffix == "X") return ".x";
    if (figure.suffix == "%+") return "percent plus";
    if (figure.suffix.ends_with('+')) {
        const std::string unit = unit_words(
            std::string_view(figure.suffix).substr(0, figure.suffix.size() - 1), number, language);
        return unit.empty() ? unit : "plus " + unit;
    }
    // "5K" is no kelvin and "10A" no current unless a decimal or more of the unit says so.
    const std::size_t slash = std::min(figure.suffix.find('/'), figure.suffix.size());
    if (slash == 1 && std::string_view("KANJ").find(figure.suffix[0]) != std::string_view::npos)
        return {};
    return unit_words(figure.suffix, number, language);
}

Number number_of(const Figure& figure) {
    return figure.is_one() ? Number::singular : Number::plural;
}

// What stands behind the figure and the half that may hang on it: "-mile" of "5½-mile".
std::string_view behind_part(const Figure& figure) {
    const FractionSign* part = fraction_sign_at(figure.suffix);
    return std::string_view(figure.suffix).substr(part == nullptr ? 0 : part->sign.size());
}

// "5-kg", "10-km-long", "5½-mile": a unit in a compound stays singular.
bool say_compound(Passage& passage, std::size_t i, std::string_view token) {
    const std::optional<Figure> figure = read_figure(token);
    if (!figure) return false;
    std::string undotted(behind_part(*figure)); // "7-mo.-old"
    std::erase(undotted, '.');
    std::string_view suffix = undotted;
    if (!suffix.starts_with('-') || suffix.size() < 2) return false;
    suffix.remove_prefix(1);
    std::size_t hyphen = std::min(suffix.find('-'), suffix.size());
    const Unit* unit = find_unit(suffix.substr(0, hyphen));
    const bool with_part = fraction_sign_at(figure->suffix) != nullptr;
    const bool is_letter =
        unit && unit->use == Use::glued && unit->sign.size() < 2 && unit->sign != "m";
    if ((unit == nullptr || is_letter) && !with_part) return false;
    std::string words = number_words(*figure, passage.language());
    if (unit == nullptr || is_letter) {
        hyphen = 0;
        words += ' ';
    } else {
        append_words(words, in_language(unit->one, passage.language()));
    }
    std::string rest = ascii::lower(suffix.substr(hyphen));
    std::replace(rest.begin(), rest.end(), '-', ' ');
    if (!std::all_of(rest.begin(), rest.end(),
                     [](char c) { return ascii::is_letter(c) || c == ' '; }))
        return false;
    passage.say(i, words + rest);
    return true;
}

// "Under 18s", "for over 65s": people of an age; "in under 30s" is a time.
bool is_age_group(const Passage& passage, std::size_t i, const Figure& figure) {
    static constexpr auto cues = std::to_array<std::string_view>({"all", "for", "most", "the"});
    if (!passage.follows(i)) return false;
    const std::string side = passage.folded(i - 1);
    const int age = to_int(figure.whole).value_or(0);
    const bool young = side == "under" && age >= 5 && age <= 25 && age % 10 != 0;
    const bool old = side == "over" && age >= 50 && age <= 90 && age % 5 == 0;
    if (!young && !old) return false;
    const bool opens = ascii::is_upper(passage.raw(i - 1)[0]);
    const std::string before = passage.follows(i - 1) ? passage.folded(i - 2) : std::string{};
    return opens || is_one_of(before, cues);
}

// "the 747s", "two 5s", "1s and 0s", "100s of": a plural, not a length of time.
bool is_plural_figure(const Passage& passage, std::size_t i, const Figure& figure) {
    static constexpr auto cues = std::to_array<std::string_view>({
        "all", "and",  "both",  "five", "four", "many",  "more",  "no",    "or",  "several",
        "six", "size", "sizes", "some", "the",  "these", "those", "three", "two",
    });
    if (!figure.fraction.empty()) return false;
    if (passage.joined(i) && passage.folded(i + 1) == "of") return true;
    if (is_age_group(passage, i, figure)) return true;
    const bool paired = passage.joined(i + 1) && passage.folded(i + 1) == "and" &&
                        passage.folded(i + 2).size() < 4 && passage.folded(i + 2).ends_with('s') &&
                        ascii::is_digit(passage.folded(i + 2)[0]);
    const bool behind_pair = i > 1 && passage.follows(i) && passage.folded(i - 1) == "and" &&
                             ascii::is_digit(passage.folded(i - 2)[0]);
    if (paired || behind_pair) return true;
    return passage.follows(i) && passage.folded(i - 1) != "and" &&
           is_one_of(passage.folded(i - 1), cues);
}

// "11 st 4 lb"; alone only in the UK, where people weigh so many stone.
bool is_stone(const Passage& passage, std::size_t i) {
    if (passage.text(i + 1) != "st") return false;
    const std::string pounds =
        passage.joined(i + 1) && passage.joined(i + 2) ? passage.folded(i + 3) : std::string{};
    return pounds == "lb" || pounds == "lbs" || passage.is_uk();
}

// "5 ft 6 in"
bool is_behind_feet(const Passage& passage, std::size_t i) {
    if (i == 0 || !passage.adjacent(i - 1)) return false;
    const std::string before = passage.folded(i - 1);
    return before == "ft" || before == "feet" || before == "foot" || before.ends_with("ft");
}

// "08" of "4°08'W": "oh eight minutes".
std::string arc_words(const Figure& figure, std::string_view unit, Language language) {
    std::string words = number_words(figure, language);
    if (figure.whole.size() == 2 && figure.whole[0] == '0' && figure.whole[1] != '0') {
        Figure last = figure;
        last.whole.erase(0, 1);
        words = "oh " + number_words(last, language);
    }
    append_words(words, unit);
    return figure.is_one() ? words : words + 's';
}

std::string_view side_of_world(std::string_view letter) {
    const Unit* side = letter.size() == 1 ? find_unit("°" + std::string(letter)) : nullptr;
    if (side == nullptr || std::string_view("NSEW").find(letter[0]) == std::string_view::npos)
        return {};
    return side->one.substr(side->one.find(' ') + 1);
}

// 50° 21' 30" N
bool say_spaced_arc(Passage& passage, std::size_t i, const Figure& degrees) {
    if (degrees.suffix != "°" || !passage.joined(i)) return false;
    const Language language = passage.language();
    std::size_t last = i;
    for (const auto& [sign, unit] : {std::pair{"'", "minute"}, std::pair{"\"", "second"}}) {
        if (!passage.joined(last)) break;
        const std::optional<Figure> part = read_figure(passage.text(last + 1));
        if (!part || part->suffix != sign) break;
        ++last;
        passage.say(last, arc_words(*part, unit, language));
    }
    if (last == i) return false;
    passage.say(i, number_words(degrees, language) + (degrees.is_one() ? " degree" : " degrees"));
    if (passage.joined(last)) {
        const std::string_view side = side_of_world(passage.text(last + 1));
        if (!side.empty()) passage.say(last + 1, side);
    }
    return true;
}

// "50N, 4W": a place on the chart.
bool say_place_on_chart(Passage& passage, std::size_t i, const Figure& north) {
    if ((north.suffix != "N" && north.suffix != "S") ||
        (!passage.joined(i) && !passage.joined_by_comma(i)))
        return false;
    const std::optional<Figure> west = read_figure(passage.text(i + 1));
    if (!west || (west->suffix != "W" && west->suffix != "E") ||
        to_int(north.whole).value_or(91) > 90 || to_int(west->whole).value_or(181) > 180)
        return false;
    for (const auto& [at, figure] : {std::pair{i, north}, std::pair{i + 1, *west}}) {
        std::string words = number_words(figure, passage.language());
        append_words(words, side_of_world(figure.suffix));
        passage.say(at, words);
    }
    return true;
}

// 40°26'46"N
bool say_arc(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t degree = token.find("°");
    if (degree == std::string_view::npos) return false;
    std::string_view rest = token.substr(degree + std::string_view("°").size());
    const std::size_t minute = rest.find('\'');
    const std::optional<Figure> degrees = read_figure(token.substr(0, degree));
    if (!degrees || !degrees->suffix.empty() || minute == std::string_view::npos) return false;
    const std::optional<Figure> minutes = read_figure(rest.substr(0, minute));
    if (!minutes || !minutes->suffix.empty()) return false;
    const Language language = passage.language();
    std::string words = number_words(*degrees, language) +
                        (degrees->is_one() ? " degree " : " degrees ") +
                        arc_words(*minutes, "minute", language);
    rest.remove_prefix(minute + 1);
    const std::size_t second = rest.find('"');
    if (second != std::string_view::npos) {
        const std::optional<Figure> seconds = read_figure(rest.substr(0, second));
        if (!seconds || !seconds->suffix.empty()) return false;
        append_words(words, arc_words(*seconds, "second", language));
        rest.remove_prefix(second + 1);
    }
    if (!rest.empty()) {
        const Unit* side = find_unit("°" + std::string(rest));
        if (side == nullptr || rest.size() != 1) return false;
        append_words(words, side->one.substr(side->one.find(' ') + 1));
    }
    passage.say(i, words);
    return true;
}

// "25° F", "40° N": the letter behind the degrees.
void say_scale_behind(Passage& passage, std::size_t i, const Figure& figure) {
    if (figure.suffix != "°" || !passage.joined(i)) return;
    const std::string next = passage.text(i + 1);
    if (next.size() != 1 || std::string_view("CFNSEW").find(next[0]) == std::string_view::npos)
        return;
    const Unit* unit = find_unit("°" + next);
    passage.say(i + 1, unit->one.substr(unit->one.find(' ') + 1));
}

// What things are counted by: "meals/week", "reps/set". Empty if it is none.
std::string_view counted_by(std::string_view word) {
    static constexpr auto names = std::to_array<std::string_view>({
        "acre",  "box",    "capita",  "class",   "day",   "dose",   "game",   "gallon",
        "head",  "home",   "hour",    "inch",    "kilo",  "lesson", "liter",  "litre",
        "meal",  "mile",   "minute",  "month",   "night", "page",   "person", "pound",
        "pupil", "second", "serving", "session", "set",   "shift",  "side",   "student",
        "team",  "term",   "trip",    "user",    "visit", "week",   "year",
    });
    static constexpr auto shorts = std::to_array<std::array<std::string_view, 2>>({
        {"hr", "hour"},
        {"kg", "kilogram"},
        {"km", "kilometer"},
        {"lb", "pound"},
        {"mi", "mile"},
        {"min", "minute"},
        {"mo", "month"},
        {"sec", "second"},
        {"wk", "week"},
        {"yr", "year"},
    });
    for (const std::string_view name : names) {
        if (word == name) return name;
    }
    for (const auto& [sign, name] : shorts) {
        if (word == sign) return name;
    }
    return {};
}

bool has_exponent(std::string_view unit) {
    return unit.ends_with("²") || unit.ends_with("³") || unit.ends_with('2') || unit.ends_with('3');
}

// "per km²", "each kg"
bool is_one_unit(const Passage& passage, std::size_t i) {
    static constexpr auto cues =
        std::to_array<std::string_view>({"a", "cubic", "each", "every", "one", "per"});
    return passage.follows(i) && is_one_of(passage.folded(i - 1), cues);
}

// "km²", "°C" and "per m²": a unit without a figure.
bool say_unit_alone(Passage& passage, std::size_t i, std::string_view token) {
    const bool degrees = token.starts_with("°");
    if (!degrees && !has_exponent(token)) return false;
    const std::string before = passage.follows(i) ? passage.folded(i - 1) : std::string{};
    const bool one = is_one_unit(passage, i);
    // "m²" alone may be a mass squared.
    std::string_view base = token;
    power_of(base);
    const bool cue = one || before == "in" || before == "of";
    if (!degrees && (base == token || base == "in" || (base.size() < 2 && !cue))) return false;
    const std::string words =
        unit_words(token, one ? Number::singular : Number::plural, passage.language());
    if (words.empty()) return false;
    passage.say(i, words);
    return true;
}

// What stands behind the cross of "3x/day"; nothing without one.
std::optional<std::string_view> behind_cross(std::string_view suffix) {
    for (const std::string_view cross : {"x", "X", "×"}) {
        if (suffix.starts_with(cross)) return suffix.substr(cross.size());
    }
    return std::nullopt;
}

// "3x a week", "2x daily", "2x the size"
bool is_times_regularly(const Passage& passage, std::size_t i) {
    static constexpr auto cues =
        std::to_array<std::string_view>({"as", "daily", "monthly", "the", "weekly", "yearly"});
    if (!passage.joined(i)) return false;
    const std::string next = passage.folded(i + 1);
    if (is_one_of(next, cues)) return true;
    return (next == "a" || next == "an" || next == "per") && passage.joined(i + 1) &&
           !counted_by(passage.folded(i + 2)).empty();
}

// "10x faster"
bool is_times_more(const Passage& passage, std::size_t i, bool fraction) {
    static constexpr auto compared = std::to_array<std::string_view>({
        "better",
        "bigger",
        "cheaper",
        "faster",
        "fewer",
        "greater",
        "higher",
        "larger",
        "less",
        "longer",
        "lower",
        "more",
        "slower",
        "smaller",
        "stronger",
        "worse",
    });
    static constexpr auto behind = std::to_array<std::string_view>({"in", "over", "since"});
    if (!passage.joined(i)) return false;
    const std::string next = passage.folded(i + 1);
    return is_one_of(next, compared) || (fraction && is_one_of(next, behind)); // "2.5x in a year"
}

std::string times_words(const Figure& figure, bool regularly, Language language) {
    const bool bare = regularly && figure.fraction.empty() && figure.sign.empty();
    if (bare && figure.whole == "1") return "once";
    if (bare && figure.whole == "2") return "twice";
    return number_words(figure, language) + " times";
}

// "3x/day", "3x a week", "10x faster": so many times.
bool say_times(Passage& passage, std::size_t i, const Figure& figure) {
    const std::optional<std::string_view> behind = behind_cross(figure.suffix);
    if (!behind) return false;
    const Language language = passage.language();
    if (behind->starts_with('/')) {
        const std::string_view by = counted_by(behind->substr(1));
        if (by.empty()) return false;
        std::string words = times_words(figure, true, language);
        append_words(words, by.starts_with("hour") ? "an" : "a");
        append_words(words, in_language(by, language));
        passage.say(i, words);
        return true;
    }
    const bool regularly = is_times_regularly(passage, i);
    if (!behind->empty() || (!regularly && !is_times_more(passage, i, !figure.fraction.empty())))
        return false;
    passage.say(i, times_words(figure, regularly, language));
    return true;
}

// Letters that are units only where something says so: "a force of 5 N", "T = 285 K", "60 J".
bool is_told_unit(const Passage& passage, std::size_t i, std::string_view letter) {
    static constexpr auto forces = std::to_array<std::string_view>({
        "drag",
        "force",
        "forces",
        "friction",
        "load",
        "newton",
        "newtons",
        "pull",
        "pulls",
        "push",
        "pushes",
        "tension",
        "thrust",
        "upthrust",
        "weighs",
        "weight",
    });
    static constexpr auto energies = std::to_array<std::string_view>(
        {"energy", "heat", "joule", "joules", "kinetic", "potential", "work"});
    static constexpr auto heats = std::to_array<std::string_view>(
        {"boils", "freezes", "kelvin", "melts", "temperature", "temperatures"});
    static constexpr auto currents = std::to_array<std::string_view>(
        {"ammeter", "amp", "amps", "charger", "circuit", "current", "currents", "fuse", "fuses"});
    const auto is_about = [letter](const std::string& word) {
        if (letter == "N") return is_one_of(word, forces);
        if (letter == "J") return is_one_of(word, energies);
        return letter == "K" ? is_one_of(word, heats) : is_one_of(word, currents);
    };
    if (letter.size() != 1 || std::string_view("NJKA").find(letter[0]) == std::string_view::npos)
        return false;
    if (passage.follows(i) && passage.text(i - 1) == "=") return true;
    constexpr std::size_t near = 8; // words: about a clause
    const std::size_t end = std::min(passage.size(), i + near);
    for (std::size_t at = i > near ? i - near : 0; at < end; ++at) {
        if (is_about(passage.folded(at))) return true;
    }
    return false;
}

// "1.96 N", "273.15 K": nothing else has a decimal before such a letter but thousands ("1.2 K").
bool is_letter_unit(const Passage& passage, std::size_t i, std::string_view letter) {
    const std::optional<Figure> figure = read_figure(passage.text(i));
    if (!figure || !figure->currency.empty()) return false;
    if (is_told_unit(passage, i, letter)) return true;
    const bool squared = letter == "N" && passage.joined(i + 1) && passage.joined(i + 2) &&
                         has_exponent(passage.text(i + 4)) &&
                         !unit_words(passage.text(i + 4), Number::plural, passage.language())
                              .empty(); // "60 N over 6 cm²"
    const bool decimal =
        figure->fraction.size() == (letter == "K" ? 2U : figure->fraction.size()) &&
        !figure->fraction.empty();
    return squared || (decimal && (letter == "N" || letter == "J" || letter == "K"));
}

bool is_scale(std::string_view suffix) {
    return suffix == "C" || suffix == "F";
}

// Letters of seats, rooms and gates are no degrees.
bool is_about_places(const Passage& passage, std::size_t i) {
    static constexpr auto places = std::to_array<std::string_view>({
        "apartment", "apartments", "block", "blocks", "coach",  "flat",    "flats", "gate",
        "gates",     "platform",   "rm",    "room",   "rooms",  "row",     "rows",  "seat",
        "seats",     "section",    "stand", "suite",  "suites", "tickets", "unit",  "ticket",
    });
    constexpr std::size_t near = 40; // words: two sentences
    const std::size_t end = std::min(passage.size(), i + near);
    for (std::size_t at = i > near ? i - near : 0; at < end; ++at) {
        if (is_one_of(passage.folded(at), places)) return true;
    }
    return false;
}

// "15C to 20C", "between 15C and 20C": each end says what the other is.
bool has_other_end(const Passage& passage, std::size_t i, std::string_view scale) {
    static constexpr auto links =
        std::to_array<std::string_view>({"and", "or", "to", "through", "up"});
    const auto is_end = [&](std::size_t at) {
        const std::optional<Figure> other = read_figure(passage.text(at));
        return other && other->suffix == scale;
    };
    const bool behind = passage.joined(i) && passage.joined(i + 1) &&
                        is_one_of(passage.folded(i + 1), links) && is_end(i + 2);
    const bool before = i > 1 && passage.follows(i) && passage.follows(i - 1) &&
                        is_one_of(passage.folded(i - 1), links) && is_end(i - 2);
    return (behind || before) && !is_about_places(passage, i);
}

bool is_temperature_cue(const Passage& passage, std::size_t i) {
    static constexpr auto reached = std::to_array<std::string_view>({
        "above",
        "around",
        "at",
        "below",
        "exceed",
        "hit",
        "hits",
        "near",
        "over",
        "reach",
        "reached",
        "reaches",
        "to",
        "under",
    });
    // These stand before a seat as well.
    static constexpr auto being = std::to_array<std::string_view>(
        {"about", "almost", "be", "is", "it's", "just", "minus", "nearly", "only", "was"});
    const std::string before = passage.follows(i) ? passage.folded(i - 1) : std::string{};
    const std::string peak = before == "of" && i > 1 ? passage.folded(i - 2) : std::string{};
    const bool of_peak = peak == "high" || peak == "highs" || peak == "low" || peak == "lows" ||
                         peak.starts_with("temperature");
    return of_peak || is_one_of(before, reached) ||
           (is_one_of(before, being) && !is_about_places(passage, i));
}

// "1.5C", "at 180C", "to 350 F": degrees where a decimal or a word says so; "12C" is a seat.
bool say_scale(Passage& passage, std::size_t i, const Figure& figure) {
    const bool apart = figure.suffix.empty() && passage.joined(i);
    const std::string scale = apart ? passage.text(i + 1) : figure.suffix;
    if (!is_scale(scale)) return false;
    const bool cue = is_temperature_cue(passage, i);
    const int whole = to_int(figure.whole).value_or(0);
    const bool decimal_heat = scale == "F" && !figure.fraction.empty(); // "98.6 F"
    const bool sure = apart ? (cue && whole >= 100) || decimal_heat
                            : !figure.fraction.empty() || (cue && whole > 1) ||
                                  !figure.sign.empty() || has_other_end(passage, i, scale);
    if (!sure || figure.grouped) return false;
    const std::string unit = single_unit(
        "°" + scale,
        is_attributive(passage, i, apart ? i + 1 : i) ? Number::singular : Number::plural,
        passage.language());
    const std::string words = number_words(figure, passage.language());
    passage.say(i, apart ? words : words + ' ' + unit);
    if (apart) passage.say(i + 1, unit);
    return true;
}

// "20-25C", "15C-20C"; the letters of "rooms 20-25C" are no degrees.
bool say_scale_range(Passage& passage, std::size_t i, const FigureRange& range) {
    const std::string& scale = range.to.suffix;
    if (!is_scale(scale) || (!range.from.suffix.empty() && range.from.suffix != scale) ||
        range.from.grouped || range.to.grouped)
        return false;
    const Language language = passage.language();
    if (is_about_places(passage, i)) {
        passage.say(i, number_words(range.from, language) + " to " +
                           number_words(range.to, language) + " ." + ascii::lower(scale));
        return true;
    }
    const Number number = is_attributive(passage, i, i) ? Number::singular : Number::plural;
    passage.say(i, number_words(range.from, language) + " to " + number_words(range.to, language) +
                       ' ' + single_unit("°" + scale, number, language));
    return true;
}

// "2-5lb", "1980-1970 kg", "10-20%"; years only where a unit says otherwise.
bool say_measure_range(Passage& passage, std::size_t i, std::string_view token) {
    const std::optional<FigureRange> range = read_range(token);
    if (!range || !range->from.currency.empty() || !range->to.currency.empty()) return false;
    if (say_scale_range(passage, i, *range)) return true;
    const Language language = passage.language();
    const std::string unit = glued_unit(range->to, Number::plural, language);
    if (!range->to.suffix.empty() && unit.empty()) return false;
    std::string words = number_words(range->from, language);
    if (!range->from.suffix.empty()) {
        const std::string own = glued_unit(range->from, number_of(range->from), language);
        if (own.empty()) return false;
        append_words(words, own);
    }
    append_words(words, "to");
    append_words(words, number_words(range->to, language));
    if (!unit.empty()) {
        append_words(words, unit);
    } else if (!say_unit_behind(passage, i, Number::plural)) {
        return false;
    }
    passage.say(i, words);
    return true;
}

} // namespace

std::string unit_words(std::string_view unit, Number number, Language language) {
    if (unit.find("⁻") != std::string_view::npos || unit.find("·") != std::string_view::npos)
        return unit_product_words(unit, number, language);
    const std::size_t slash = unit.find('/');
    if (slash == std::string_view::npos || slash == 0) return single_unit(unit, number, language);
    const std::string upper = single_unit(unit.substr(0, slash), number, language);
    const std::string_view rest = unit.substr(slash + 1);
    // "8 L/100km": per so many of them.
    if (!rest.empty() && ascii::is_digit(rest[0])) {
        if (unit.starts_with("V/")) return {}; // "5 V/2 A"
        const std::optional<Figure> count = read_figure(rest);
        if (!count || upper.empty()) return {};
        std::string words = upper + " per " + number_words(*count, language);
        if (count->suffix.empty()) return words;
        const std::string counted = single_unit(count->suffix, Number::plural, language);
        return counted.empty() ? counted : words + ' ' + counted;
    }
    std::string lower = rest == "s2" || rest == "s²"
                            ? "second squared"
                            : single_unit(rest, Number::singular, language);
    if (lower.empty() && is_word(rest)) lower = rest;
    return upper.empty() || lower.empty() ? std::string{} : upper + " per " + lower;
}

namespace {

// "10 s", "9.58 s", "5 h", but not "1990 s".
bool is_time_apart(const Passage& passage, std::size_t i) {
    const std::string unit = passage.text(i + 1);
    const std::string count = passage.text(i);
    const bool year_like =
        count.size() == 4 && std::all_of(count.begin(), count.end(), ascii::is_digit);
    return (unit == "s" || unit == "h") && !year_like;
}

// "1012 mb" is weather and no file.
bool is_air_pressure(std::string_view figure) {
    const std::optional<int> pressure = to_int(figure);
    return pressure && *pressure >= 870 && *pressure <= 1085;
}

// "5 km-long": the unit and what it measures.
bool say_unit_compound(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string_view::npos || hyphen < 2) return false;
    std::string rest(token.substr(hyphen));
    std::replace(rest.begin(), rest.end(), '-', ' ');
    if (rest.size() < 3 || !std::all_of(rest.begin(), rest.end(),
                                        [](char c) { return ascii::is_lower(c) || c == ' '; }))
        return false;
    const std::string unit =
        single_unit(token.substr(0, hyphen), Number::singular, passage.language());
    if (unit.empty()) return false;
    passage.say(i, unit + rest);
    return true;
}

} // namespace

bool say_unit_behind(Passage& passage, std::size_t i, Number number) {
    if (!passage.joined(i)) return false;
    const std::string text = passage.text(i + 1);
    const Language language = passage.language();
    if (is_stone(passage, i)) {
        passage.say(i + 1, "stone");
        return true;
    }
    const bool prefix = text == "sq" || text == "cu" || text == "fl";
    if (const Unit* unit = find_unit(text); unit && !prefix) {
        // "5 in." is inches, "5 in the morning" is not.
        const bool stopped = unit->sign.size() > 1 && passage.stop_behind(i + 1);
        const bool inches = text == "in" && is_behind_feet(passage, i);
        if (unit->use == Use::glued && !stopped && !inches && !is_time_apart(passage, i) &&
            !is_letter_unit(passage, i, text))
            return false;
    }
    if (text.find("⁻") != std::string::npos) return say_unit_product(passage, i + 1);
    if (say_unit_compound(passage, i + 1, text)) return true;
    const std::string words = unit_words(text, number, language);
    if (words.empty()) return false;
    if (text == "fl" && passage.text(i + 2) != "oz") return false;
    if (text == "mb" && is_air_pressure(passage.text(i))) {
        passage.say(i + 1, "millibars");
        return true;
    }
    if (text == "mm" && passage.joined(i + 1) && passage.text(i + 2) == "Hg")
        passage.say(i + 2, "of mercury");
    const std::size_t slash = text.find('/');
    const bool counted = slash != std::string::npos && slash + 1 < text.size() &&
                         std::all_of(text.begin() + static_cast<std::ptrdiff_t>(slash) + 1,
                                     text.end(), ascii::is_digit);
    if (counted && passage.joined(i + 1)) { // "8 L/100 km", "4 m/10 min"
        const std::string last = single_unit(passage.text(i + 2), Number::plural, language);
        if (!last.empty()) passage.say(i + 2, last);
    }
    if (prefix && passage.adjacent(i + 1)) {
        const std::string next = passage.text(i + 2);
        const Unit* unit = find_unit(next);
        if (unit == nullptr) return false;
        passage.say(i + 2,
                    in_language(number == Number::plural ? unit->many : unit->one, language));
    }
    if (text == "ppt") { // of salt in the sea, or of a trace
        passage.say(i + 1, words, {"parts per trillion"});
    } else {
        passage.say(i + 1, words);
    }
    return true;
}

// "3.8 bn years", "300 mn": the short form of a word behind a bare figure.
bool say_short_magnitude(Passage& passage, std::size_t i, const Figure& figure) {
    static constexpr auto shorts = std::to_array<std::string_view>({"bn", "Bn", "mn", "tn", "trn"});
    if (!figure.suffix.empty() || !passage.joined(i) || !is_one_of(passage.text(i + 1), shorts))
        return false;
    passage.say(i, number_words(figure, passage.language()));
    passage.say(i + 1, magnitude_of_suffix(ascii::lower(passage.text(i + 1))));
    say_unit_behind(passage, i + 1, Number::plural);
    return true;
}

// "5600K", "3200 K": the colour of light.
bool say_colour_of_light(Passage& passage, std::size_t i, const Figure& figure) {
    const bool apart = figure.suffix.empty() && passage.joined(i) && passage.text(i + 1) == "K";
    const int heat = figure.whole.size() == 4 ? to_int(figure.whole).value_or(0) : 0;
    if ((!apart && figure.suffix != "K") || !figure.sign.empty() || !figure.fraction.empty() ||
        heat < 1500 || heat % 50 != 0)
        return false;
    const std::string number = in_pairs(figure.whole, passage.language());
    passage.say(i, apart ? number : number + " kelvin");
    if (apart) passage.say(i + 1, "kelvin");
    return true;
}

bool is_years_old(std::string text) {
    std::erase_if(text, [](char c) { return c == '.' || c == '/' || c == '-'; });
    return text == "yo";
}

// "a 7yo", "7 y/o", "a 5-y.o."
bool say_age(Passage& passage, std::size_t i, const Figure& figure) {
    const bool apart = figure.suffix.empty() && passage.joined(i);
    if (!figure.fraction.empty() || !is_years_old(apart ? passage.folded(i + 1) : figure.suffix))
        return false;
    static constexpr auto articles = std::to_array<std::string_view>(
        {"a", "an", "every", "her", "his", "my", "our", "that", "the", "their", "this", "your"});
    const bool attributive =
        figure.is_one() || (passage.follows(i) && is_one_of(passage.folded(i - 1), articles));
    const std::string number = number_words(figure, passage.language());
    const std::string old = attributive ? "year old" : "years old";
    passage.say(i, apart ? number : number + ' ' + old);
    if (apart) passage.say(i + 1, old);
    return true;
}

// "180C/350F/gas": an oven on several scales.
bool say_oven(Passage& passage, std::size_t i, std::string_view token) {
    std::string words;
    std::size_t scales = 0;
    while (!token.empty()) {
        const std::size_t slash = std::min(token.find('/'), token.size());
        const std::string_view part = token.substr(0, slash);
        token.remove_prefix(std::min(slash + 1, token.size()));
        const std::optional<Figure> figure = read_figure(part);
        if (part == "gas" || part == "fan") {
            append_words(words, part);
            continue;
        }
        if (!figure || figure->whole.size() < 2 || !figure->sign.empty()) return false;
        std::string_view scale = figure->suffix;
        if (scale.starts_with("°")) scale.remove_prefix(std::string_view("°").size());
        if (scale != "C" && scale != "F") return false;
        append_words(words, number_words(*figure, passage.language()));
        append_words(words, scale == "C" ? "degrees celsius" : "degrees fahrenheit");
        ++scales;
    }
    if (scales < 2) return false;
    passage.say(i, words);
    return true;
}

// "Runway 27L", "Route 9W": a letter of the name and no unit.
bool say_lettered_name(Passage& passage, std::size_t i, const Figure& figure) {
    static constexpr auto named = std::to_array<std::string_view>({
        "apartment", "apt", "bay",    "box",  "building", "bus",   "exit",  "figure", "flat",
        "gate",      "hwy", "line",   "page", "platform", "room",  "rm",    "route",  "row",
        "rt",        "rte", "runway", "seat", "section",  "stand", "suite", "unit",   "zone",
    });
    const bool letter = figure.suffix.size() == 1 && ascii::is_upper(figure.suffix[0]);
    if (!letter || !figure.sign.empty() || !figure.fraction.empty() || i == 0 ||
        !passage.adjacent(i - 1) || !is_one_of(passage.folded(i - 1), named))
        return false;
    const Language language = passage.language();
    passage.say(i, (figure.whole.size() == 3 ? in_pairs(figure.whole, language)
                                             : number_words(figure, language)) +
                       " ." + ascii::lower(figure.suffix));
    return true;
}

// "5 kg-10 kg"
bool say_spaced_span(Passage& passage, std::size_t i) {
    if (!passage.joined(i) || !passage.joined(i + 1)) return false;
    const std::string middle = passage.text(i + 1);
    const std::size_t hyphen = middle.find('-');
    if (hyphen == std::string::npos) return false;
    const std::optional<Figure> from = read_figure(passage.text(i));
    const std::optional<Figure> to = read_figure(middle.substr(hyphen + 1));
    if (!from || !to || !from->suffix.empty() || !to->suffix.empty()) return false;
    const Language language = passage.language();
    const std::string unit = unit_words(middle.substr(0, hyphen), number_of(*from), language);
    if (unit.empty() || !say_unit_behind(passage, i + 1, number_of(*to))) return false;
    passage.say(i, number_words(*from, language));
    passage.say(i + 1, unit + " to " + number_words(*to, language));
    return true;
}

// "in km", "per sq. ft.", "how many mph": units that are no words.
bool say_bare_unit(Passage& passage, std::size_t i) {
    static constexpr auto signs =
        std::to_array<std::string_view>({"cm", "kg", "km", "kph", "lb", "lbs", "mph"});
    const std::string_view raw = passage.raw(i);
    const Number number = is_one_unit(passage, i) ? Number::singular : Number::plural;
    const Language language = passage.language();
    if (raw == "sq" && passage.adjacent(i)) {
        const std::string unit = unit_words(passage.text(i + 1), number, language);
        if (unit.empty()) return false;
        passage.say(i, "square");
        passage.say(i + 1, unit);
        return true;
    }
    if (!is_one_of(raw, signs)) return false;
    passage.say(i, unit_words(raw, number, language));
    return true;
}

// "meals/week", "people/km²", "kg/m2", "km²": without a figure against it.
bool say_rate(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (token.size() < 2 || ascii::is_digit(token[0])) return false;
    const std::size_t slash = token.find('/');
    if (slash == std::string::npos) return say_unit_alone(passage, i, token);
    const std::string top = passage.folded(i).substr(0, slash);
    const std::string_view bottom = std::string_view(token).substr(slash + 1);
    const Language language = passage.language();
    if (has_exponent(bottom) && !unit_words(token, Number::plural, language).empty()) {
        passage.say(i, unit_words(token, Number::plural, language));
        return true;
    }
    const bool often = top == "once" || top == "twice";
    if (!is_lower_plural(top) && top != "people" && !often) return false;
    if (!std::all_of(top.begin(), top.end(), ascii::is_lower)) return false;
    std::string by = in_language(counted_by(bottom), language);
    if (by.empty() && has_exponent(bottom)) by = unit_words(bottom, Number::singular, language);
    if (by.empty()) return false;
    passage.say(i, top + " per " + by);
    return true;
}

bool say_measure(Passage& passage, std::size_t i) {
    if (say_spaced_span(passage, i)) return true;
    const std::string token = passage.text(i);
    if (say_oven(passage, i, token)) return true;
    if (say_measure_range(passage, i, token) || say_arc(passage, i, token)) return true;
    const std::optional<Figure> figure = read_figure(token);
    if (!figure || !figure->currency.empty()) return false;
    if (say_colour_of_light(passage, i, *figure)) return true;
    if (say_short_magnitude(passage, i, *figure)) return true;
    if (say_spaced_arc(passage, i, *figure) || say_place_on_chart(passage, i, *figure)) return true;
    if (say_lettered_name(passage, i, *figure) || say_age(passage, i, *figure)) return true;
    if (say_glued_stone(passage, i, *figure) || say_times(passage, i, *figure)) return true;
    if (say_feet(passage, i, *figure) || say_compound(passage, i, token)) return true;
    const Language language = passage.language();
    if (say_scale(passage, i, *figure)) return true;
    if (!behind_part(*figure).empty()) {
        const std::string next = passage.joined(i) ? passage.folded(i + 1) : std::string{};
        // "100s of people", "5m people", "802.11ac"
        if (figure->suffix == "s" && is_plural_figure(passage, i, *figure)) return false;
        if (figure->suffix == "ac" && !figure->fraction.empty()) return false;
        if (figure->suffix == "m" && is_counted_in_millions(next)) {
            passage.say(i, number_words(*figure, language) + " million");
            return true;
        }
        const bool singular = figure->is_one() || is_attributive(passage, i, i) ||
                              tells_apart(passage, i, figure->suffix);
        Figure bare = *figure;
        bare.suffix = behind_part(*figure);
        const Number number = singular ? Number::singular : Number::plural;
        std::string unit = glued_unit(bare, number, language);
        if (unit.empty() && is_told_unit(passage, i, bare.suffix)) // "285K", "a 13A fuse"
            unit = single_unit(bare.suffix, number, language);
        if (unit.empty()) return false;
        // The race: "fifteen hundred meters".
        const bool race = figure->whole == "1500" && figure->suffix == "m" && !figure->grouped;
        passage.say(i,
                    (race ? in_pairs(figure->whole, language) : number_words(*figure, language)) +
                        ' ' + unit);
        say_scale_behind(passage, i, *figure);
        return true;
    }
    if (passage.text(i + 1) == "m" && passage.joined(i) && passage.joined(i + 1) &&
        is_counted_in_millions(passage.folded(i + 2))) { // "5 m people"
        passage.say(i, number_words(*figure, language));
        passage.say(i + 1, "million");
        return true;
    }
    std::size_t last = i;
    if (passage.joined(i) && !magnitude_of_word(passage.folded(i + 1)).empty()) last = i + 1;
    const bool singular = (figure->is_one() && last == i) || is_attributive(passage, i, last + 1);
    if (!say_unit_behind(passage, last, singular ? Number::singular : Number::plural)) return false;
    passage.say(i, number_words(*figure, language));
    if (last > i) passage.say(last, passage.folded(last));
    return true;
}

} // namespace say
