# Scripts that are spoken to a camera: colours for .say files, by the shapes of a line.
# Put this file into the autoload folder; docs/editors/kakoune.md has the settings for the server.

hook global BufCreate .*\.say %{ set-option buffer filetype sayline }

hook global WinSetOption filetype=sayline %{
    require-module sayline
    try %{ set-option buffer comment_line '%' } # comes with Kakoune's own scripts
    add-highlighter -override window/sayline ref sayline
    add-highlighter -override window/sayline-wrap wrap -word
    sayline-find-header
    # Ranges only: a header that a change makes or breaks is seen once the keys rest.
    hook -group sayline window NormalIdle .* sayline-find-header
    hook -group sayline window InsertIdle .* sayline-find-header
    hook -once -always window WinSetOption filetype=.* %{
        remove-highlighter window/sayline
        remove-highlighter window/sayline-wrap
        remove-hooks window sayline
    }
}

provide-module sayline %§

set-face global sayline_heading title
set-face global sayline_header comment
set-face global sayline_key variable
set-face global sayline_value string
set-face global sayline_speaker type
set-face global sayline_note comment
set-face global sayline_direction attribute
set-face global sayline_mark keyword
set-face global sayline_escape value
set-face global sayline_raw mono
set-face global sayline_link link
set-face global sayline_stress default+i
set-face global sayline_heavy default+b
set-face global sayline_soft comment
set-face global sayline_quick variable
set-face global sayline_slow function
set-face global sayline_quoted string

declare-option -hidden range-specs sayline_header_ranges

# A header stands at the very top or nowhere, which no pattern of a line can tell.
define-command -hidden sayline-find-header %{
    set-option window sayline_header_ranges %val{timestamp}
    evaluate-commands -draft -save-regs '/' %{ try %{
        execute-keys '%s\A---\h*\n(?:\h*\w[^\n:]*:[^\n]*\n)*(?:---\h*\n)?<ret>'
        evaluate-commands -draft %{ try %{
            execute-keys 's^---\h*$<ret>'
            evaluate-commands -itersel %{
                set-option -add window sayline_header_ranges "%val{selection_desc}|sayline_header"
            }
        } }
        evaluate-commands -draft %{ try %{
            execute-keys 's^\h*\w[^\n:]*(?=:)<ret>s\S(?:.*\S)?<ret>'
            evaluate-commands -itersel %{
                set-option -add window sayline_header_ranges "%val{selection_desc}|sayline_key"
            }
        } }
        execute-keys 's^\h*\w[^\n:]*:\h*\K\S[^\n]*<ret>'
        evaluate-commands -itersel %{
            set-option -add window sayline_header_ranges "%val{selection_desc}|sayline_value"
        }
    } }
}

add-highlighter shared/sayline group

# Words between marks; a mark behind a backslash opens nothing.
add-highlighter shared/sayline/ regex (?<![^\s"“(*_<>~°\[])(")([^"\s](?:[^"\n]*[^"\s])?)(") 1:sayline_mark 2:sayline_quoted 3:sayline_mark
add-highlighter shared/sayline/ regex (?<![\\*])(\*\*)([^*\s](?:[^*\n]*[^*\s])?)(\*\*) 1:sayline_mark 2:sayline_heavy 3:sayline_mark
add-highlighter shared/sayline/ regex (?<![^\s"“(*<>~°])(__)([^_\s](?:[^_\n]*[^_\s])?)(__) 1:sayline_mark 2:sayline_heavy 3:sayline_mark
add-highlighter shared/sayline/ regex (?<![\\*])(\*)([^*\s](?:[^*\n]*[^*\s])?)(\*)(?!\*) 1:sayline_mark 2:sayline_stress 3:sayline_mark
add-highlighter shared/sayline/ regex (?<![^\s"“(*<>~°])(_)([^_\s](?:[^_\n]*[^_\s])?)(_)(?!\w) 1:sayline_mark 2:sayline_stress 3:sayline_mark
add-highlighter shared/sayline/ regex (?<![^\s"“(*_<>])(~)([^~\s\d](?:[^~\n]*[^~\s])?)(~) 1:sayline_mark 2:sayline_soft 3:sayline_mark
add-highlighter shared/sayline/ regex (?<![^\s"“(*_<>])(°)([^°\s\d](?:[^°\n]*[^°\s\d])?)(°) 1:sayline_mark 2:sayline_soft 3:sayline_mark
add-highlighter shared/sayline/ regex (?<![^\s"“(*_~°])(>)([^<>\s](?:[^<>\n]*[^<>\s])?)(<) 1:sayline_mark 2:sayline_quick 3:sayline_mark
add-highlighter shared/sayline/ regex (?<![^\s"“(*_~°])(<)([^<>\s](?:[^<>\n]*[^<>\s])?)(>) 1:sayline_mark 2:sayline_slow 3:sayline_mark

# Silence and tune
add-highlighter shared/sayline/ regex \.{3,}|(?:\.\ ){2}\.|… 0:sayline_mark
add-highlighter shared/sayline/ regex [.!?…"”*_~°<>)]\h(x)(?!\S) 1:sayline_mark
add-highlighter shared/sayline/ regex (?<!\S)xx+(?!\S) 0:sayline_mark
add-highlighter shared/sayline/ regex (?<!\S)(?<!\d\s)//?(?!\S) 0:sayline_mark
add-highlighter shared/sayline/ regex \((?:\.|\d{1,2}\.\d+s?|\d{1,2}s)\) 0:sayline_mark
add-highlighter shared/sayline/ regex [↑↓↗↘‿] 0:sayline_mark
add-highlighter shared/sayline/ regex (?<![^\s"“(*_<>~])\^(?=[a-zA-Z]) 0:sayline_mark
add-highlighter shared/sayline/ regex (?<=[a-zA-Z])::+(?=[\s.,\;!?…]) 0:sayline_mark
add-highlighter shared/sayline/ regex (?<=\S)\{[^{}\n]+\} 0:sayline_mark

# What holds no marks lies over them.
add-highlighter shared/sayline/ regex \[(?:[^\[\]\n]|\[[^\[\]\n]*\])*\] 0:sayline_direction
add-highlighter shared/sayline/ regex \\[!-/:-@\[-`{-~] 0:sayline_escape
add-highlighter shared/sayline/ regex `[^`\n]+` 0:sayline_raw
add-highlighter shared/sayline/ regex \bhttps?://[^\s<>]+ 0:sayline_link

# Lines
add-highlighter shared/sayline/ regex ^\h*(-|\d{1,2}\.)(?=\h) 1:sayline_mark
add-highlighter shared/sayline/ regex ^\h*([A-Z][A-Z0-9'’.-]*(?:[\ +]+[A-Z][A-Z0-9'’.-]*)*:)(?=\s) 1:sayline_speaker
add-highlighter shared/sayline/ regex ^\h*(---)\h*$ 1:sayline_mark
add-highlighter shared/sayline/ regex ^\h*(#{1,3}\h+\S[^\n]*) 1:sayline_heading
add-highlighter shared/sayline/ regex ^\h*(%(?:\h[^\n]*)?)$ 1:sayline_note
add-highlighter shared/sayline/ ranges sayline_header_ranges

§
