// How messages name a sound.
#pragma once

#include "speech/phones.h"

#include <string>

namespace say {

// The letters a writer would use, not a transcription: "s", "sh", "ng". Both sounds of "th" are
// one to a writer.
std::string letters_of(Sound sound);

} // namespace say
