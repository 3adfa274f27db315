// Sounds as a writer knows them.
#include "speech/sound_letters.h"

namespace say {

std::string letters_of(Sound sound) {
    if (sound == Sound::DH) return "th";
    if (sound == Sound::HH) return "h";
    std::string letters(name_of(sound));
    for (char& c : letters)
        c = static_cast<char>(c - 'A' + 'a');
    return letters;
}

} // namespace say
