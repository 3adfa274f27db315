<?xml version="1.0" encoding="UTF-8"?>
<lexicon version="1.0" xmlns="http://www.w3.org/2005/01/pronunciation-lexicon"
         alphabet="ipa" xml:lang="en-GB">
  <lexeme>
    <grapheme>Patella</grapheme>
    <phoneme>pəˈtɛlə</phoneme>
  </lexeme>
  <lexeme>
    <grapheme>Fowey</grapheme>
    <phoneme>ˈfɔɪǃ</phoneme>
  </lexeme>
  <lexeme>
    <grapheme>TPW</grapheme>
    <alias>tide pool watch</alias>
  </lexeme>
</lexicon>
