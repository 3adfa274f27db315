// A draft as a script: its pieces in order, its words as they are, and nothing that is a mark
// unless the draft set those words apart.
#pragma once

#include "importers/draft.h"

#include <string>
#include <vector>

namespace say {

struct ScriptWishes {
    bool sentences = false; // a sentence a paragraph
    int stress_words = 3;   // a stress over more words is left out (the option of that name)
};

struct WrittenScript {
    std::string text;
    int stresses = 0;
    // The words of stresses that lie over more words than a reader can lean on.
    std::vector<std::string> left_out;
    int directions = 0; // what stood in square brackets and is not spoken
};

// The script's own parser decides what would be read as a mark and so takes a backslash: reading
// the script gives the words of the draft. Quotes, brackets around words and three dots stay as
// they are; they mean in a script what they mean in a draft. So do directions in square brackets
// and a template's fields: nobody reads those out.
WrittenScript write_script(const Draft& draft, const ScriptWishes& wishes);

// The script with thoughts all in capitals in lower case, as the fix of `all-capitals` does it.
std::string lowered(const std::string& script);

} // namespace say
