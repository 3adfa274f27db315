// The sounds of a word nobody has listed, guessed from its letters. With machine_voice.h
// all that knows of flite.
#pragma once

#include "speech/phones.h"

#include <string_view>

namespace say {

// `letters` are a to z; whatever else is among them is passed over. May give nothing.
Phones guess_sounds(std::string_view letters);

} // namespace say
