// Words that the CMU dictionary lacks, or whose first reading there is rare ("anemone"), and sounds
// people write without vowels. The readings are our own, as commonly heard; no source. In the order
// of their bytes.
#include "speech/own_words.h"

#include <algorithm>
#include <iterator>

namespace say {

namespace {

struct OwnWord {
    std::string_view word;
    std::string_view arpabet;
};

// The clicks have no phone of their own; the nearest stands for them.
constexpr OwnWord own_words[] = {
    {"aah", "AA1"},
    {"ahem", "AH0 HH EH1 M"},
    {"anemone", "AH0 N EH1 M AH0 N IY0"},
    {"anemones", "AH0 N EH1 M AH0 N IY0 Z"},
    {"arg", "AA1 R G"},
    {"brr", "B ER1"},
    {"codec", "K OW1 D EH2 K"},
    {"codecs", "K OW1 D EH2 K S"},
    {"covid", "K OW1 V IH0 D"},
    {"css", "S IY2 EH2 S EH1 S"},
    {"eek", "IY1 K"},
    {"emoji", "IH0 M OW1 JH IY0"},
    {"emojis", "IH0 M OW1 JH IY0 Z"},
    {"ew", "Y UW1"},
    {"eww", "Y UW1"},
    {"gif", "G IH1 F"},
    {"gifs", "G IH1 F S"},
    {"grr", "G ER1"},
    {"gui", "G UW1 IY0"},
    {"json", "JH EY1 S AH0 N"},
    {"meh", "M EH1"},
    {"periwinkle", "P EH1 R IY0 W IH2 NG K AH0 L"},
    {"periwinkles", "P EH1 R IY0 W IH2 NG K AH0 L Z"},
    {"pfft", "P F T"},
    {"psst", "P S T"},
    {"pst", "P S T"},
    {"quadrat", "K W AA1 D R AH0 T"},
    {"quadrats", "K W AA1 D R AH0 T S"},
    {"shan't", "SH AE1 N T"},
    {"sriracha", "S ER0 AA1 CH AH0"},
    {"tsk", "T IH1 S K"},
    {"vlog", "V L AA1 G"},
    {"vlogs", "V L AA1 G Z"},
    {"webcam", "W EH1 B K AE2 M"},
    {"webcams", "W EH1 B K AE2 M Z"},
    {"whelk", "W EH1 L K"},
    {"whelks", "W EH1 L K S"},
    {"zzz", "Z"},
};

constexpr bool is_before(const OwnWord& a, const OwnWord& b) {
    return a.word < b.word;
}
static_assert(std::is_sorted(std::begin(own_words), std::end(own_words), is_before));

} // namespace

std::optional<Phones> own_word(std::string_view word) {
    const auto* found =
        std::lower_bound(std::begin(own_words), std::end(own_words), OwnWord{word, {}}, is_before);
    if (found == std::end(own_words) || found->word != word) return std::nullopt;
    return from_arpabet(found->arpabet);
}

} // namespace say
