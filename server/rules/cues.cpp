#include "rules/cues.h"

#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

template <std::size_t n>
bool is_among(const std::array<std::string_view, n>& list, std::string_view word) {
    return std::find(list.begin(), list.end(), word) != list.end();
}

} // namespace

bool begins_cue(std::string_view inside) {
    constexpr std::array<std::string_view, 27> cues = {
        "beat",  "breath", "breathe", "click", "cut",    "gesture", "hold",  "laugh",  "laughs",
        "look",  "looks",  "music",   "nod",   "nods",   "pause",   "point", "points", "sfx",
        "shows", "sigh",   "slide",   "smile", "smiles", "turn",    "turns", "vt",     "wait"};
    return is_among(cues, ascii::lower(inside.substr(0, inside.find_first_of(" :,.;"))));
}

bool is_bare_cue(std::string_view inside) {
    constexpr std::array<std::string_view, 34> cues = {
        "beat",       "a beat",      "long beat", "pause",   "long pause", "short pause",
        "big pause",  "brief pause", "breath",    "breathe", "breathes",   "take a breath",
        "smile",      "smiles",      "smiling",   "laugh",   "laughs",     "laughing",
        "laughter",   "nods",        "sigh",      "sighs",   "applause",   "music",
        "sfx",        "v.o.",        "vo",        "v/o",     "o.s.",       "voice over",
        "off camera", "on camera",   "to camera", "cont'd"};
    return is_among(cues, ascii::lower(inside));
}

} // namespace say::rules
