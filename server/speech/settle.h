// What the grammar leaves open because it needs a word list: is this capital word a punch or
// initials, is this a stretched word or two colons, can this pronouncer be read?
#pragma once

#include "speech/phones.h"
#include "syntax/script.h"

namespace say {

// Adds punches, drops stretches of unknown words and reports pronouncers that nobody can read.
void settle(Written& written);

// The sounds of a pronouncer's parts, one list a word it covers: IPA between slashes or a
// respelling. Empty if any part cannot be read.
std::vector<Phones> read_pronouncer(std::string_view argument);

} // namespace say
