// The phrasing model's weights (speech/phrasing_table.h), compiled in as read-only pages.
    .section .rodata
    .balign 16
    .global say_phrasing_table
    .hidden say_phrasing_table
    .type say_phrasing_table, %object
say_phrasing_table:
    .incbin "phrasing.bin"
    .size say_phrasing_table, . - say_phrasing_table
    .section .note.GNU-stack, "", %progbits
