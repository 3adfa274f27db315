// Money: "$5", "£1.50", "€30bn", "$15.2 billion", "5 USD", "$50-$100", "a $5 bill", "$20/hour".
// The sign stands before the figure and is said behind it, behind the magnitude if there is one.
#include "base/lists.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

// Signs of use and codes of ISO 4217.
constexpr auto currencies = std::to_array<Currency>({
    {"$", "dollar", "dollars", "cent", "cents"},
    {"US$", ".us dollar", ".us dollars", "cent", "cents"},
    {"USD", ".us dollar", ".us dollars", "cent", "cents"},
    {"C$", "canadian dollar", "canadian dollars", "cent", "cents"},
    {"CA$", "canadian dollar", "canadian dollars", "cent", "cents"},
    {"CAD", "canadian dollar", "canadian dollars", "cent", "cents"},
    {"A$", "australian dollar", "australian dollars", "cent", "cents"},
    {"AU$", "australian dollar", "australian dollars", "cent", "cents"},
    {"AUD", "australian dollar", "australian dollars", "cent", "cents"},
    {"NZ$", "new zealand dollar", "new zealand dollars", "cent", "cents"},
    {"NZD", "new zealand dollar", "new zealand dollars", "cent", "cents"},
    {"HK$", "hong kong dollar", "hong kong dollars", "cent", "cents"},
    {"HKD", "hong kong dollar", "hong kong dollars", "cent", "cents"},
    {"S$", "singapore dollar", "singapore dollars", "cent", "cents"},
    {"SGD", "singapore dollar", "singapore dollars", "cent", "cents"},
    {"£", "pound", "pounds", "penny", "pence"},
    {"GBP", "british pound", "british pounds", "penny", "pence"},
    {"€", "euro", "euros", "cent", "cents"},
    {"EUR", "euro", "euros", "cent", "cents"},
    {"¥", "yen", "yen", "", ""},
    {"JPY", "japanese yen", "japanese yen", "", ""},
    {"CNY", "yuan", "yuan", "", ""},
    {"RMB", "yuan", "yuan", "", ""},
    {"CHF", "swiss franc", "swiss francs", "centime", "centimes"},
    {"SEK", "swedish krona", "swedish kronor", "", ""},
    {"NOK", "norwegian krone", "norwegian kroner", "", ""},
    {"DKK", "danish krone", "danish kroner", "", ""},
    {"₹", "rupee", "rupees", "paisa", "paise"},
    {"Rs", "rupee", "rupees", "paisa", "paise"},
    {"INR", "indian rupee", "indian rupees", "paisa", "paise"},
    {"₩", "won", "won", "", ""},
    {"KRW", "south korean won", "south korean won", "", ""},
    {"₽", "ruble", "rubles", "kopek", "kopeks"},
    {"₺", "lira", "lira", "", ""},
    {"₪", "shekel", "shekels", "", ""},
    {"₫", "dong", "dong", "", ""},
    {"₱", "peso", "pesos", "", ""},
    {"R$", "real", "reais", "", ""},
    {"₦", "naira", "naira", "", ""},
    {"₿", "bitcoin", "bitcoins", "", ""},
    {"BTC", "bitcoin", "bitcoins", "", ""},
    {"¢", "cent", "cents", "", ""},
    {"kr", "krone", "kroner", "", ""},
    {"zł", "zloty", "zlotys", "", ""},
    {"Kč", "koruna", "korunas", "", ""},
});

// Two digits of a coin; none if the fraction is finer than that.
std::optional<std::string> coins_of(std::string fraction) {
    while (fraction.size() > 2 && fraction.ends_with('0'))
        fraction.pop_back();
    if (fraction.size() == 1) fraction += '0';
    if (fraction.size() != 2) return std::nullopt;
    return fraction;
}

std::string with_coins(const Figure& figure, const Currency& currency, std::string_view coins,
                       Language language) {
    const int minor = to_int(coins).value_or(0);
    const int major = figure.whole.empty() ? 0 : to_int(figure.whole).value_or(1); // "$.75"
    std::string minor_words = cardinal(minor, language);
    append_words(minor_words, minor == 1 ? currency.minor_one : currency.minor_many);
    if (major == 0 && minor != 0) {
        std::string words = figure.sign;
        append_words(words, minor_words);
        return words;
    }
    Figure whole = figure;
    whole.fraction.clear();
    std::string words = number_words(whole, language);
    append_words(words, major == 1 ? currency.one : currency.many);
    if (minor == 0) return words;
    if (currency.sign == "£" && language == Language::en_gb && minor > 9) {
        append_words(words, cardinal(minor, language)); // "one pound fifty"
        return words;
    }
    if (minor < 10) append_words(words, "and");
    append_words(words, minor_words);
    return words;
}

// "20/hour", "20/hr": what follows the slash.
std::string rate_words(std::string_view suffix, Language language) {
    if (!suffix.starts_with('/') || suffix.size() < 2) return {};
    const std::string_view unit = suffix.substr(1);
    std::string name = unit_words(unit, Number::singular, language);
    if (name.empty() && std::all_of(unit.begin(), unit.end(), ascii::is_letter))
        name = ascii::lower(unit);
    return name.empty() ? name : "per " + name;
}

// "£5pp", "£12pppn", "£600pcm": what a price is for, as advertisements and lets have it.
std::string_view terms_words(std::string_view suffix) {
    struct Terms {
        std::string_view sign;
        std::string_view words;
    };
    static constexpr auto terms = std::to_array<Terms>({
        {"pa", "per year"},
        {"pcm", "per calendar month"},
        {"pn", "per night"},
        {"pp", "per person"},
        {"ppn", "per person per night"},
        {"pppn", "per person per night"},
        {"pppw", "per person per week"},
        {"ppw", "per person per week"},
        {"pw", "per week"},
    });
    for (const Terms& term : terms) {
        if (term.sign == suffix) return term.words;
    }
    return {};
}

struct Amount {
    Figure figure;
    const Currency* currency = nullptr;
    std::string_view magnitude;
    std::string tail;      // "per hour"
    bool singular = false; // attributive
};

std::string money_words(const Amount& amount, Language language) {
    const Currency& currency = *amount.currency;
    std::string words;
    const std::optional<std::string> coins = coins_of(amount.figure.fraction);
    if (amount.magnitude.empty() && coins && !currency.minor_one.empty()) {
        words = with_coins(amount.figure, currency, *coins, language);
    } else {
        words = number_words(amount.figure, language);
        append_words(words, amount.magnitude);
        const bool one = amount.singular || (amount.figure.is_one() && amount.magnitude.empty());
        append_words(words, one ? currency.one : currency.many);
    }
    append_words(words, amount.tail);
    return words;
}

// Reads what follows the number: a magnitude ("bn", "-million") or a rate; false if it is neither.
bool read_suffix(Amount& amount, Language language) {
    std::string_view suffix = amount.figure.suffix;
    if (suffix.empty() || fraction_sign_at(suffix)) return true;
    if (suffix == "'s" || suffix == "s") return true; // "$20's worth", "in $20s"
    if (suffix == "ish") {
        amount.tail = suffix;
        return true;
    }
    if (const std::string_view terms = terms_words(suffix); !terms.empty()) {
        amount.tail = terms;
        return true;
    }
    // "€1.2bn/yr"
    if (const std::size_t slash = suffix.find('/'); slash != std::string_view::npos && slash > 0) {
        amount.magnitude = magnitude_of_suffix(suffix.substr(0, slash));
        amount.tail = rate_words(suffix.substr(slash), language);
        return !amount.magnitude.empty() && !amount.tail.empty();
    }
    if (suffix.ends_with('+')) { // "$100+", "$5M+"
        suffix.remove_suffix(1);
        amount.tail = "plus";
        amount.magnitude = magnitude_of_suffix(suffix);
        return suffix.empty() || !amount.magnitude.empty();
    }
    amount.tail = rate_words(suffix, language);
    if (!amount.tail.empty()) return true;
    if (suffix.starts_with('-')) suffix.remove_prefix(1);
    // "£1.2m-a-year"
    if (const std::size_t hyphen = suffix.find("-a-"); hyphen != std::string_view::npos) {
        amount.magnitude = magnitude_of_suffix(suffix.substr(0, hyphen));
        const std::string_view noun = suffix.substr(hyphen + 3);
        if (!amount.magnitude.empty() && std::all_of(noun.begin(), noun.end(), ascii::is_letter)) {
            amount.tail = "a " + ascii::lower(noun);
            return true;
        }
    }
    amount.magnitude = magnitude_of_suffix(suffix);
    if (!amount.magnitude.empty()) return true;
    // "$5-a-day"
    if (amount.figure.suffix[0] != '-') return false;
    std::string rest = ascii::lower(suffix);
    std::replace(rest.begin(), rest.end(), '-', ' ');
    amount.tail = rest;
    amount.singular = !rest.starts_with("a ") && rest != "plus" && rest != "ish";
    return std::all_of(rest.begin(), rest.end(),
                       [](char c) { return ascii::is_letter(c) || c == ' '; });
}

// The magnitude that word i is behind an amount ("$5 million", "$5 bn").
std::string_view magnitude_word(const Passage& passage, std::size_t i) {
    const std::string word = passage.folded(i);
    const std::string_view magnitude = magnitude_of_word(word);
    if (!magnitude.empty()) return magnitude;
    const bool short_word = word == "k" || word == "m" || word == "mn" || word == "bn" ||
                            word == "tn" || passage.raw(i) == "B";
    return short_word ? magnitude_of_suffix(word) : std::string_view{};
}

// "£5 million-worth"
bool say_worth_of_millions(Passage& passage, std::size_t i, const Amount& amount,
                           std::string before) {
    const std::string next = passage.folded(i + 1);
    const std::size_t hyphen = next.find('-');
    if (hyphen == std::string::npos || next.substr(hyphen) != "-worth") return false;
    const std::string_view magnitude = magnitude_of_word(std::string_view(next).substr(0, hyphen));
    if (magnitude.empty()) return false;
    append_words(before, number_words(amount.figure, passage.language()));
    passage.say(i, before);
    passage.say(i + 1,
                std::string(magnitude) + ' ' + std::string(amount.currency->many) + " worth");
    return true;
}

// Said at i behind `before`; a magnitude word behind it takes the currency.
void say_amount(Passage& passage, std::size_t i, Amount amount, std::string before = {}) {
    const Language language = passage.language();
    const bool open = amount.magnitude.empty() && amount.tail.empty() && passage.joined(i);
    const std::string_view magnitude = open ? magnitude_word(passage, i + 1) : std::string_view{};
    if (!magnitude.empty()) {
        std::string words(magnitude);
        const bool singular = is_attributive(passage, i, i + 1);
        append_words(words, singular ? amount.currency->one : amount.currency->many);
        passage.say(i + 1, words);
        append_words(before, number_words(amount.figure, language));
        passage.say(i, before);
        return;
    }
    if (open && say_worth_of_millions(passage, i, amount, before)) return;
    if (open) { // "£20 pp"
        const std::string_view terms = terms_words(passage.text(i + 1));
        if (!terms.empty()) passage.say(i + 1, terms);
    }
    amount.singular = amount.singular || is_attributive(passage, i, i);
    append_words(before, money_words(amount, language));
    passage.say(i, before);
}

// "$50-$100", "$50-100", "$5-10 million"
bool say_money_range(Passage& passage, std::size_t i, std::string_view token) {
    const std::optional<FigureRange> range = read_range(token);
    if (!range || range->from.currency.empty()) return false;
    const Language language = passage.language();
    Amount from{range->from, currency_of(range->from.currency), {}, {}, false};
    Amount to{range->to, from.currency, {}, {}, false};
    if (!range->to.currency.empty()) to.currency = currency_of(range->to.currency);
    if (!read_suffix(to, language) || !read_suffix(from, language)) return false;
    const bool shares_magnitude =
        !to.magnitude.empty() || (passage.joined(i) && !magnitude_word(passage, i + 1).empty());
    // "£4.50-6": coins need their currency; "a £20-£30 fee" names it once, before the noun.
    const bool coins = from.figure.fraction.size() == 2;
    const bool shares = shares_magnitude ||
                        (!coins && (range->to.currency.empty() || is_attributive(passage, i, i)));
    std::string before;
    if (from.magnitude.empty() && shares) {
        before = number_words(from.figure, language);
    } else {
        before = money_words(from, language);
    }
    say_amount(passage, i, to, before + " to");
    return true;
}

// "£5/£3", "£9/£7/£5": one or the other. A slash between two choices is "or" (The Chicago Manual of
// Style 17, 6.106, from memory).
bool say_money_choice(Passage& passage, std::size_t i, std::string_view token) {
    const Language language = passage.language();
    const bool singular = is_attributive(passage, i, i); // "a $5/$3 ticket"
    std::string words;
    std::size_t choices = 0;
    for (std::string_view rest = token; !rest.empty();) {
        const std::size_t slash = std::min(rest.find('/'), rest.size());
        const std::optional<Figure> figure = read_figure(rest.substr(0, slash));
        if (!figure || figure->currency.empty() || !figure->suffix.empty()) return false;
        append_words(words, choices++ > 0 ? "or" : "");
        append_words(words, money_words({*figure, currency_of(figure->currency), {}, {}, singular},
                                        language));
        rest.remove_prefix(std::min(rest.size(), slash + 1));
    }
    if (choices < 2 || token.ends_with('/')) return false;
    passage.say(i, words);
    return true;
}

// "50c off", "20c each": cents, where nothing else is meant.
bool is_cents(const Passage& passage, std::size_t i, std::string_view sign) {
    static constexpr auto behind =
        std::to_array<std::string_view>({"a", "apiece", "each", "less", "more", "off", "per"});
    return sign == "c" && passage.joined(i) && is_one_of(passage.folded(i + 1), behind);
}

// "$1.2 million-$1.5 million", whose middle word belongs to both amounts.
bool say_spaced_money_range(Passage& passage, std::size_t i) {
    if (!passage.joined(i)) return false;
    const std::string middle = passage.text(i + 1);
    const std::size_t hyphen = middle.find('-');
    if (hyphen == std::string::npos) return false;
    const std::string_view magnitude = magnitude_of_word(middle.substr(0, hyphen));
    const std::optional<Figure> from = read_figure(passage.text(i));
    const std::optional<Figure> to = read_figure(middle.substr(hyphen + 1));
    if (magnitude.empty() || !from || !to || from->currency.empty() || !from->suffix.empty())
        return false;
    const Language language = passage.language();
    const Currency* currency = currency_of(from->currency);
    Amount last{*to, to->currency.empty() ? currency : currency_of(to->currency), {}, {}, false};
    if (!read_suffix(last, language)) return false;
    passage.say(i, number_words(*from, language));
    say_amount(passage, i + 1, last,
               std::string(magnitude) + ' ' + std::string(currency->many) + " to");
    return true;
}

// "$100s", "$1,000s of dollars": nobody says the one.
bool say_round_plural(Passage& passage, std::size_t i, const Figure& figure) {
    if (figure.suffix != "s" || !figure.fraction.empty() || figure.whole.size() < 3) return false;
    const std::string words = number_words(figure, passage.language());
    const std::size_t blank = words.find(' ');
    if (!words.starts_with("one ") || words.find(' ', blank + 1) != std::string::npos) return false;
    std::string plural = to_plural(words.substr(blank + 1));
    if (!passage.joined(i) || passage.folded(i + 1) != "of")
        plural += " of " + std::string(currency_of(figure.currency)->many);
    passage.say(i, plural);
    return true;
}

// "Shoot at 24p": frames and no pence, where the words are about pictures.
bool is_frame_rate(const Passage& passage, const Figure& figure) {
    static constexpr auto rates =
        std::to_array<std::string_view>({"24", "25", "30", "48", "50", "60", "120"});
    static constexpr auto pictures = std::to_array<std::string_view>({
        "camera",
        "film",
        "filmed",
        "filming",
        "footage",
        "frame",
        "frames",
        "record",
        "recording",
        "shoot",
        "shooting",
        "shot",
        "video",
    });
    if (!is_one_of(figure.whole, rates)) return false;
    for (std::size_t i = 0; i < passage.size(); ++i) {
        if (is_one_of(passage.folded(i), pictures)) return true;
    }
    return false;
}

// A currency behind the figure: "5€", "5 €", "5 USD", "20¢".
bool say_trailing_currency(Passage& passage, std::size_t i, const Figure& figure) {
    if (!figure.currency.empty()) return false;
    const Language language = passage.language();
    const bool letters = figure.suffix == "Rs"; // "the 3Rs"
    const std::size_t slash = std::min(figure.suffix.find('/'), figure.suffix.size());
    const std::string sign = figure.suffix.substr(0, slash);
    const std::string rate = rate_words(figure.suffix.substr(slash), language); // "80p/kg"
    if (rate.empty() && slash < figure.suffix.size()) return false;
    const Currency* currency = letters                      ? nullptr
                               : is_cents(passage, i, sign) ? currency_of("¢")
                                                            : currency_of(sign);
    if (currency == nullptr && sign == "p" && passage.is_uk() && !is_line_count(figure.whole) &&
        !is_frame_rate(passage, figure)) {
        std::string words = number_words(figure, language);
        append_words(words, figure.is_one() ? "penny" : "pence");
        append_words(words, rate);
        passage.say(i, words);
        return true;
    }
    if (currency != nullptr) {
        Amount amount{figure, currency, {}, rate, is_attributive(passage, i, i)};
        amount.figure.suffix.clear();
        passage.say(i, money_words(amount, language));
        return true;
    }
    if (!figure.suffix.empty() || !passage.joined(i)) return false;
    std::size_t last = i + 1;
    const std::string_view magnitude = magnitude_of_word(passage.folded(last));
    if (!magnitude.empty() && passage.joined(last)) ++last;
    currency = currency_of(passage.text(last));
    if (currency == nullptr || (last == i + 2 && magnitude.empty())) return false;
    if (last == i + 2) {
        passage.say(i, number_words(figure, language));
        passage.say(i + 1, magnitude);
        passage.say(last, currency->many);
        return true;
    }
    const std::optional<std::string> coins = coins_of(figure.fraction);
    if (coins && !currency->minor_one.empty()) {
        passage.say(i, money_words({figure, currency, {}, {}, false}, language));
        passage.say(last, "");
        return true;
    }
    passage.say(i, number_words(figure, language));
    passage.say(last, figure.is_one() ? currency->one : currency->many);
    return true;
}

} // namespace

const Currency* currency_of(std::string_view sign) {
    const auto* found =
        std::find_if(currencies.begin(), currencies.end(),
                     [sign](const Currency& currency) { return currency.sign == sign; });
    return found == currencies.end() ? nullptr : found;
}

bool say_money(Passage& passage, std::size_t i) {
    // Capitals without a figure are a currency only if they are a code: "EUR 20".
    const std::string_view raw = passage.raw(i);
    if (!raw.empty() && ascii::is_upper(raw[0]) && raw.size() != 3 && raw != "Rs" &&
        std::all_of(raw.begin(), raw.end(), ascii::is_letter))
        return false;
    const std::string token = passage.text(i);
    // "$ 5": the sign alone says nothing, its figure all.
    const bool abbreviated = token == "Rs" && passage.joined_by_stop(i);
    if (currency_of(token) != nullptr && (passage.joined(i) || abbreviated)) {
        const std::optional<Figure> figure = read_figure(passage.text(i + 1));
        if (!figure || !figure->currency.empty()) return false;
        Amount amount{*figure, currency_of(token), {}, {}, false};
        if (!read_suffix(amount, passage.language())) return false;
        passage.say(i, "");
        say_amount(passage, i + 1, amount);
        return true;
    }
    if (say_money_choice(passage, i, token)) return true;
    if (say_spaced_money_range(passage, i) || say_money_range(passage, i, token)) return true;
    const std::optional<Figure> figure = read_figure(token);
    if (!figure) return false;
    if (figure->currency.empty()) return say_trailing_currency(passage, i, *figure);
    if (say_round_plural(passage, i, *figure)) return true;
    Amount amount{*figure, currency_of(figure->currency), {}, {}, false};
    if (!read_suffix(amount, passage.language())) return false;
    say_amount(passage, i, amount);
    // "$5 USD" names the same currency twice.
    if (passage.joined(i) && !passage.is_said(i + 1) && figure->currency == "$") {
        const std::string code = passage.text(i + 1);
        if (const Currency* named = currency_of(code); named && code.size() == 3) {
            Figure alone = *figure;
            alone.currency.clear();
            say_trailing_currency(passage, i, alone);
        }
    }
    return true;
}

} // namespace say
