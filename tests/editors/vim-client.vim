" Headless Vim with a language client from Debian (vim-ale) and the settings that the manual gives for
" it, which stand in $SAYLINE_SETTINGS. Run by `vim-client` beside this file.
set nocompatible
set encoding=utf-8
let &runtimepath = $SAYLINE_PLUGIN .. ',' .. &runtimepath
packadd ale
filetype plugin on
syntax on

function s:fail(message)
  call writefile(['vim-client: ' .. a:message], $SAYLINE_LOG, 'a')
  cquit 1
endfunction

" True once Done() is; asked ten times a second for half a minute.
function s:wait(Done)
  for s:turn in range(300)
    if a:Done()
      return v:true
    endif
    sleep 100m
  endfor
  return v:false
endfunction

function s:findings()
  return map(getloclist(0), {_, row -> row.lnum .. ': ' .. row.text})
endfunction

function s:has_finding(pattern)
  return match(s:findings(), a:pattern) >= 0
endfunction

function s:preview()
  for number in range(1, winnr('$'))
    if getwinvar(number, '&previewwindow')
      return join(getbufline(winbufnr(number), 1, '$'), "\n")
    endif
  endfor
  return ''
endfunction

" Nobody is there to answer the client's list of fixes: the one that parts the sentences is taken.
let s:offered = 'no list'
runtime autoload/ale/util.vim
function! ale#util#Input(message, value, ...)
  let s:offered = a:message
  return matchstr(a:message, '\d\+\ze) [^\n]*own thought')
endfunction

try
  execute 'source' fnameescape($SAYLINE_SETTINGS)
  let g:ale_hover_to_preview = 1
  execute 'edit' fnameescape($SAYLINE_SCRIPT)
  let s:line = search('^JO: We put the square')
  if !s:wait({-> s:has_finding('^' .. s:line .. ': .*run-on')})
    call s:fail('the finding does not come: ' .. string(s:findings()))
  endif

  " The setting of the manual's lines has arrived: 5 s in the place of 6.
  call append(line('$'), ['', 'It took nine months and a crew of forty people from every village'
        \ .. ' along this coast to count the limpets on that one long reef for the very first time.'])
  call ale#Queue(0)
  if !s:wait({-> s:has_finding('the limit is 5.0 s')})
    call s:fail('the setting does not count: ' .. string(s:findings()))
  endif

  call cursor(s:line, 10)
  ALEHover
  if !s:wait({-> s:preview() =~# '\d s'})
    call s:fail('hover does not tell the time of a thought: ' .. s:preview())
  endif

  call cursor(s:line, 10)
  ALECodeAction
  if !s:wait({-> getline(s:line + 2) =~# '^We count what sits inside it'})
    call s:fail('a fix does not mend the thought: ' .. s:offered .. ' / ' .. getline(s:line))
  endif
  qall!
catch
  call s:fail(v:exception .. ' at ' .. v:throwpoint)
endtry
