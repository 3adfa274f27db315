// Words that the CMU dictionary lacks, or whose first reading there is rare ("anemone"), and sounds
// people write without vowels. The readings are our own, as commonly heard; no source. In the order
// of their bytes.
#include "speech/own_words.h"

#include <algorithm>
#include <iterator>
#include <span>

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
    {"kilohm", "K IH1 L OW2 M"},
    {"kilohms", "K IH1 L OW2 M Z"},
    {"megohm", "M EH1 G OW2 M"},
    {"megohms", "M EH1 G OW2 M Z"},
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

// Words whose accents tell the sound: without them they are other words ("resume", "rose", "pate")
// or none. As English speakers say them, from memory; "résumé" and the like agree with
// a reading of the dictionary's word without accents. In the order of their bytes.
constexpr OwnWord accented_words[] = {
    {"appliqué", "AE2 P L IH0 K EY1"},
    {"arête", "AH0 R EH1 T"},
    {"açaí", "AA0 S AY0 IY1"},
    {"aïoli", "AY0 OW1 L IY0"},
    {"blasé", "B L AA0 Z EY1"},
    {"brontë", "B R AA1 N T EY0"},
    {"brûlée", "B R UW0 L EY1"},
    {"béarnaise", "B EY2 ER0 N EY1 Z"},
    {"béchamel", "B EY2 SH AH0 M EH1 L"},
    {"communiqué", "K AH0 M Y UW2 N AH0 K EY1"},
    {"consommé", "K AA2 N S AH0 M EY1"},
    {"coupé", "K UW0 P EY1"},
    {"crudité", "K R UW2 D IH0 T EY1"},
    {"crème", "K R EH1 M"},
    {"divorcé", "D IH0 V AO2 R S EY1"},
    {"divorcée", "D IH0 V AO2 R S EY1"},
    {"doppelgänger", "D AA1 P AH0 L G AE2 NG ER0"},
    {"déclassé", "D EY2 K L AE0 S EY1"},
    {"décolletage", "D EY2 K AA0 L T AA1 ZH"},
    {"décolleté", "D EY2 K AA0 L T EY1"},
    {"découpage", "D EY2 K UW0 P AA1 ZH"},
    {"dégagé", "D EY2 G AA0 ZH EY1"},
    {"déjà", "D EY1 ZH AA0"},
    {"démodé", "D EY2 M OW0 D EY1"},
    {"déshabillé", "D EY2 Z AH0 B IY1 EY0"},
    {"entrecôte", "AA1 N T R AH0 K OW2 T"},
    {"exposé", "EH2 K S P OW0 Z EY1"},
    {"fiancé", "F IY2 AA0 N S EY1"},
    {"fiancée", "F IY2 AA0 N S EY1"},
    {"flambé", "F L AA0 M B EY1"},
    {"frappé", "F R AE0 P EY1"},
    {"fraîche", "F R EH1 SH"},
    {"fräulein", "F R OY1 L AY2 N"},
    {"glacé", "G L AE0 S EY1"},
    {"gruyère", "G R UW0 Y EH1 R"},
    {"gâteau", "G AE1 T OW0"},
    {"gâteaux", "G AE1 T OW0 Z"},
    {"gîte", "ZH IY1 T"},
    {"gödel", "G ER1 D AH0 L"},
    {"habitué", "HH AH0 B IH1 CH UW0 EY2"},
    {"jalapeño", "HH AE2 L AH0 P EY1 N Y OW0"},
    {"jardinière", "ZH AA2 R D IH0 N Y EH1 R"},
    {"jeté", "ZH AH0 T EY1"},
    {"köln", "K ER1 L N"},
    {"lamé", "L AA0 M EY1"},
    {"lycée", "L IY0 S EY1"},
    {"malmö", "M AE1 L M ER0"},
    {"manqué", "M AA0 NG K EY1"},
    {"maté", "M AA1 T EY2"},
    {"maître", "M EH1 T R AH0"},
    {"mañana", "M AH0 N Y AA1 N AH0"},
    {"moiré", "M W AA0 R EY1"},
    {"mâché", "M AA0 SH EY1"},
    {"mère", "M EH1 R"},
    {"mélange", "M EY0 L AA1 N ZH"},
    {"ménage", "M EY0 N AA1 ZH"},
    {"mésalliance", "M EY0 Z AE1 L IY0 AH0 N S"},
    {"métier", "M EH1 T Y EY0"},
    {"münchen", "M UH1 N SH AH0 N"},
    {"müsli", "M Y UW1 Z L IY0"},
    {"née", "N EY1"},
    {"négligé", "N EH1 G L IH0 ZH EY2"},
    {"névé", "N EY0 V EY1"},
    {"olé", "OW0 L EY1"},
    {"outré", "UW0 T R EY1"},
    {"passé", "P AE0 S EY1"},
    {"pied-à-terre", "P Y EY2 D AA0 T EH1 R"},
    {"piqué", "P IY0 K EY1"},
    {"pièce", "P Y EH1 S"},
    {"piña", "P IY1 N Y AH0"},
    {"piñata", "P IY0 N Y AA1 T AH0"},
    {"piñon", "P IH1 N Y AH0 N"},
    {"plié", "P L IY0 EY1"},
    {"poincaré", "P W AE0 NG K AA0 R EY1"},
    {"protégée", "P R OW1 T AH0 ZH EY2"},
    {"provençal", "P R OW2 V AA0 N S AA1 L"},
    {"précis", "P R EY1 S IY0"},
    {"pâte", "P AA1 T"},
    {"pâtisserie", "P AH0 T IH1 S ER0 IY0"},
    {"pâté", "P AA0 T EY1"},
    {"père", "P EH1 R"},
    {"recherché", "R AH0 SH ER0 SH EY1"},
    {"retroussé", "R AH0 T R UW0 S EY1"},
    {"rosé", "R OW0 Z EY1"},
    {"roulé", "R UW0 L EY1"},
    {"roué", "R UW0 EY1"},
    {"rémoulade", "R EY2 M AH0 L AA1 D"},
    {"répétiteur", "R EY0 P EH2 T IH0 T ER1"},
    {"résumé", "R EH1 Z AH0 M EY2"},
    {"röntgen", "R EH1 N T G AH0 N"},
    {"saké", "S AA1 K EY0"},
    {"schrödinger", "SH R OW1 D IH0 NG ER0"},
    {"señores", "S EY0 N Y AO1 R EY2 S"},
    {"señorita", "S EH2 N Y AO0 R IY1 T AH0"},
    {"soupçon", "S UW1 P S AA0 N"},
    {"sœur", "S ER1"},
    {"touché", "T UW0 SH EY1"},
    {"tête", "T EH1 T"},
    {"tête-à-tête", "T EH2 T AH0 T EH1 T"},
    {"velouté", "V AH0 L UW0 T EY1"},
    {"vis-à-vis", "V IY2 Z AH0 V IY1"},
    {"vérité", "V EH2 R IH0 T EY1"},
    {"à", "AA0"},
    {"éclair", "EY0 K L EH1 R"},
    {"élan", "EY0 L AA1 N"},
    {"étagère", "EY2 T AH0 ZH EH1 R"},
    {"étouffée", "EY2 T UW0 F EY1"},
    {"être", "EH1 T R AH0"},
    {"über", "UW1 B ER0"},
    {"œuvre", "UH1 V R AH0"},
};

constexpr bool is_before(const OwnWord& a, const OwnWord& b) {
    return a.word < b.word;
}
static_assert(std::is_sorted(std::begin(own_words), std::end(own_words), is_before));
static_assert(std::is_sorted(std::begin(accented_words), std::end(accented_words), is_before));

std::optional<Phones> find_in(std::span<const OwnWord> words, std::string_view word) {
    const auto found = std::lower_bound(words.begin(), words.end(), OwnWord{word, {}}, is_before);
    if (found == words.end() || found->word != word) return std::nullopt;
    return from_arpabet(found->arpabet);
}

} // namespace

std::optional<Phones> own_word(std::string_view word) {
    if (auto phones = find_in(own_words, word)) return phones;
    return find_in(accented_words, word);
}

} // namespace say
