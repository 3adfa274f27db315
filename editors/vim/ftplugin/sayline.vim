" How a script behaves in a window: soft wrapping, notes as comments, a fold for each section.
if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

setlocal commentstring=%\ %s
setlocal comments=:%,fb:-
setlocal wrap linebreak
" A line end inside a thought means nothing, but nobody wants one put there while typing.
setlocal formatoptions-=t formatoptions-=a
compiler sayline
setlocal foldmethod=expr foldexpr=SaylineFoldLevel(v:lnum) foldlevel=99

let b:undo_ftplugin = 'setlocal commentstring< comments< wrap< linebreak< formatoptions<'
      \ .. ' foldmethod< foldexpr< foldlevel< makeprg< errorformat<'

if exists('*SaylineFoldLevel')
  finish
endif

" For 'foldexpr': a heading opens a fold of its level.
function SaylineFoldLevel(line_number) abort
  let signs = matchstr(getline(a:line_number), '^\s*\zs##\?#\?\ze[ \t]\+\S')
  return empty(signs) ? '=' : '>' .. len(signs)
endfunction
