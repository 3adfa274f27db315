" Headless Vim on the cases of colours.json: what it paints goes to $SAYLINE_OUT, and how a script
" behaves in a window is checked. Run by `vim` beside this file.
set nocompatible
set encoding=utf-8
let &runtimepath = $SAYLINE_PLUGIN .. ',' .. &runtimepath
filetype plugin on
syntax on

function s:fail(message)
  call writefile(['vim: ' .. a:message], $SAYLINE_LOG, 'a')
  cquit 1
endfunction

" Runs of one syntax group: [[name, text], ...], the name without its first word.
function s:painted()
  let pieces = []
  for number in range(1, line('$'))
    let text = getline(number)
    let column = 1
    let last = v:null
    for character in split(text, '\zs')
      let group = synIDattr(synID(number, column, 1), 'name')
      let name = tolower(substitute(group, '^sayline', '', ''))
      let name = get(s:names, name, name)
      if name is# last
        let pieces[-1][1] ..= character
      else
        call add(pieces, [name, character])
      endif
      let last = name
      let column += len(character)
    endfor
  endfor
  return pieces
endfunction

" The finer groups of silence and tune are all marks.
let s:names = {'pause': 'mark', 'beat': 'mark', 'breath': 'mark', 'timed': 'mark', 'tune': 'mark',
      \ 'braces': 'mark', 'item': 'mark', 'divider': 'mark', 'fence': 'header', 'header': ''}

try
  execute 'edit' fnameescape($SAYLINE_SCRIPT)
  if &filetype !=# 'sayline'
    call s:fail('a .say file has the file type "' .. &filetype .. '"')
  endif
  if &commentstring !=# '% %s' || !&wrap || !&linebreak
    call s:fail('a script is not wrapped, or its notes are no comments')
  endif
  let s:heading = search('^# Hello')
  if foldlevel(s:heading + 2) != 1
    call s:fail('a section does not fold')
  endif

  " The findings, without a language client.
  let $PATH = fnamemodify($SAYLINE_PROGRAM, ':h') .. ':' .. $PATH
  silent make
  let s:runs_on = filter(getqflist(), {_, row -> row.text =~# 'run-on'})
  if len(s:runs_on) != 1 || getline(s:runs_on[0].lnum) !~# '^JO: We put the square' || s:runs_on[0].type !=# 'w'
    call s:fail(':make does not bring the thought that runs on: ' .. string(getqflist()))
  endif

  let s:all = []
  for s:case in json_decode(join(readfile($SAYLINE_CASES), ''))
    enew!
    set filetype=sayline
    call setline(1, split(s:case.text, "\n"))
    syntax sync fromstart
    call add(s:all, s:painted())
  endfor
  call writefile([json_encode(s:all)], $SAYLINE_OUT)
  qall!
catch
  call s:fail(v:exception .. ' at ' .. v:throwpoint)
endtry
