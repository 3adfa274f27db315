// The packed dictionary (data/pack_cmudict.py tells its layout), compiled in as read-only pages:
// nothing is read from them until a word is looked up.
    .section .rodata
    .balign 16
    .global say_lexicon_table
    .hidden say_lexicon_table
    .type say_lexicon_table, %object
say_lexicon_table:
    .incbin "cmudict.bin"
    .global say_lexicon_table_end
    .hidden say_lexicon_table_end
say_lexicon_table_end:
    .byte 0
    .size say_lexicon_table, . - say_lexicon_table
    .section .note.GNU-stack, "", %progbits
