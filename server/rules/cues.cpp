#include "rules/cues.h"

#include "base/lists.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>
#include <string>

namespace say::rules {

bool begins_cue(std::string_view inside) {
    constexpr std::array<std::string_view, 27> cues = {
        "beat",  "breath", "breathe", "click", "cut",    "gesture", "hold",  "laugh",  "laughs",
        "look",  "looks",  "music",   "nod",   "nods",   "pause",   "point", "points", "sfx",
        "shows", "sigh",   "slide",   "smile", "smiles", "turn",    "turns", "vt",     "wait"};
    return is_one_of(ascii::lower(inside.substr(0, inside.find_first_of(" :,.;"))), cues);
}

namespace {

std::string_view first_word(std::string_view text) {
    return text.substr(0, text.find(' '));
}

std::string_view behind_first(std::string_view text) {
    const std::size_t blank = text.find(' ');
    return blank == std::string_view::npos ? std::string_view{} : text.substr(blank + 1);
}

// "Cut to wide shot of the pool", "Fade out", "Zoom in on the jar".
bool is_cut(std::string_view cue) {
    constexpr std::array<std::string_view, 12> openings = {
        "cut to ", "cut back to ", "cut away to ", "fade to ",     "fade in", "fade out",
        "fade up", "zoom in",      "zoom out",     "dissolve to ", "pan to ", "switch to camera"};
    return std::any_of(openings.begin(), openings.end(),
                       [&](std::string_view opening) { return cue.starts_with(opening); });
}

// "Slide 3", "next slide", "camera 2", "SFX: waves".
bool is_cue_of_screen(std::string_view cue) {
    constexpr std::array<std::string_view, 7> things = {"slide",   "camera", "graphic", "clip",
                                                        "caption", "sfx",    "vt"};
    if (cue == "next slide" || cue == "click" || cue == "wide shot" || cue == "close-up")
        return true;
    std::string_view thing = first_word(cue);
    const bool colon = thing.ends_with(':');
    if (colon) thing.remove_suffix(1);
    const std::string_view rest = behind_first(cue);
    const bool number = !rest.empty() && std::all_of(rest.begin(), rest.end(), ascii::is_digit);
    return is_one_of(thing, things) && (colon || number);
}

// "music fades", "lights up", "applause".
bool is_cue_of_sound(std::string_view cue) {
    constexpr std::array<std::string_view, 6> sounds = {"music",  "applause", "sound",
                                                        "lights", "titles",   "credits"};
    constexpr std::array<std::string_view, 15> ways = {
        "fade", "fades", "starts", "stops", "ends",   "up",       "down",     "under",
        "out",  "in",    "plays",  "roll",  "swells", "fades in", "fades out"};
    return is_one_of(first_word(cue), sounds) && is_one_of(behind_first(cue), ways);
}

// "waves", "He waves", "She looks at the camera".
bool is_gesture(std::string_view cue) {
    constexpr std::array<std::string_view, 3> people = {"he", "she", "they"};
    constexpr std::array<std::string_view, 20> gestures = {
        "waves",    "nods", "smiles", "laughs", "sighs", "shrugs",   "winks",
        "claps",    "bows", "coughs", "pauses", "grins", "gestures", "chuckles",
        "breathes", "wave", "nod",    "smile",  "laugh", "shrug"};
    constexpr std::array<std::string_view, 6> to_lens = {"looks at the camera", "looks to camera",
                                                         "looks at camera",     "turns to camera",
                                                         "turns to the camera", "clears throat"};
    const bool somebody = is_one_of(first_word(cue), people);
    const std::string_view what = somebody ? behind_first(cue) : cue;
    if (is_one_of(what, to_lens)) return true;
    // "wave" alone may be an aside; "they wave" is none.
    return is_one_of(what, gestures) && (somebody || what.ends_with('s'));
}

} // namespace

bool is_bare_cue(std::string_view inside) {
    constexpr std::array<std::string_view, 34> cues = {
        "beat",       "a beat",      "long beat", "pause",   "long pause", "short pause",
        "big pause",  "brief pause", "breath",    "breathe", "breathes",   "take a breath",
        "smile",      "smiles",      "smiling",   "laugh",   "laughs",     "laughing",
        "laughter",   "nods",        "sigh",      "sighs",   "applause",   "music",
        "sfx",        "v.o.",        "vo",        "v/o",     "o.s.",       "voice over",
        "off camera", "on camera",   "to camera", "cont'd"};
    const std::string lower = ascii::lower(inside);
    if (is_one_of(lower, cues)) return true;
    std::string_view cue = lower;
    while (cue.ends_with('.') || cue.ends_with('!'))
        cue.remove_suffix(1);
    return is_one_of(cue, cues) || is_cut(cue) || is_cue_of_screen(cue) || is_cue_of_sound(cue) ||
           is_gesture(cue);
}

} // namespace say::rules
