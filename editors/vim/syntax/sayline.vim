" Colours for .say files where there is no tree-sitter parser and the editor does not show the
" server's semantic tokens. Shapes only: what needs a word list is left plain.
if exists('b:current_syntax')
  finish
endif

syntax case match
syntax sync minlines=50

" A mark never crosses the blank line that ends its thought.
syntax match saylineEscape /\\[[:punct:]]/
syntax match saylineRaw /`[^`]\+`/
syntax match saylineLink +\<https\?://[^[:space:]<>]\++

syntax match saylinePause /\.\{3,}\|…/
syntax match saylineBeat /\%([.!?…"”*_~°<>)]\s\)\@2<=x\ze\%(\s\|$\)/
syntax match saylineBeat /\%(^\|\s\)\@1<=xx\+\ze\%(\s\|$\)/
syntax match saylineBreath +\%(\d\s\)\@2<!\%(^\|\s\)\@1<=//\?\ze\%(\s\|$\)+
syntax match saylineTimed /(\%(\.\|\d\{1,2}\.\d\+s\?\|\d\{1,2}s\))/
syntax match saylineTune /[↑↓↗↘‿]/
syntax match saylineTune /\%(^\|[[:space:]"“(*_<>~]\)\@1<=^\ze\a/
syntax match saylineTune /\a\@1<=:::*\ze\%([[:space:].,;!?…]\|$\)/
syntax match saylineBraces /\S\@1<={[^{}]\+}/

syntax region saylineQuoted matchgroup=saylineMark start=/\%(^\|[[:space:](\[*_<>~°]\)\@1<="\ze\S/ end=/\S\@1<="/ end=/^\s*$/ contains=@saylineInline keepend
syntax region saylineStress matchgroup=saylineMark start=/\*\@1<!\*\ze[^*[:space:]]/ end=/[^*[:space:]]\@1<=\*/ oneline contains=@saylineInline
syntax region saylineStress matchgroup=saylineMark start=/\%(^\|[[:space:]"“(*<>~°]\)\@1<=_\ze[^_[:space:]]/ end=/[^_[:space:]]\@1<=_\ze\%([^[:alnum:]_]\|$\)/ oneline contains=@saylineInline
syntax region saylineHeavy matchgroup=saylineMark start=/\*\*\ze[^*[:space:]]/ end=/[^*[:space:]]\@1<=\*\*/ oneline contains=@saylineInline
syntax region saylineHeavy matchgroup=saylineMark start=/\%(^\|[[:space:]"“(*<>~°]\)\@1<=__\ze[^_[:space:]]/ end=/[^_[:space:]]\@1<=__/ oneline contains=@saylineInline
syntax region saylineSoft matchgroup=saylineMark start=/\%(^\|[[:space:]"“(*_<>]\)\@1<=\~\ze[^~[:space:][:digit:]]/ end=/[^~[:space:]]\@1<=\~/ oneline contains=@saylineInline
syntax region saylineSoft matchgroup=saylineMark start=/\%(^\|[[:space:]"“(*_<>]\)\@1<=°\ze[^°[:space:][:digit:]]/ end=/[^°[:space:][:digit:]]\@1<=°/ oneline contains=@saylineInline
syntax region saylineQuick matchgroup=saylineMark start=/\%(^\|[[:space:]"“(*_~°]\)\@1<=>\ze[^<>[:space:]]/ end=/\S\@1<=</ oneline contains=@saylineInline
syntax region saylineSlow matchgroup=saylineMark start=/\%(^\|[[:space:]"“(*_~°]\)\@1<=<\ze[^<>[:space:]]/ end=/\S\@1<=>/ oneline contains=@saylineInline

syntax region saylineDirection start=/\[\ze[^]]*\]/ end=/\]/ oneline contains=saylineDirection

syntax cluster saylineInline contains=saylineEscape,saylineRaw,saylineLink,saylinePause,saylineBeat,saylineBreath,saylineTimed,saylineTune,saylineBraces,saylineStress,saylineHeavy,saylineSoft,saylineQuick,saylineSlow,saylineQuoted,saylineDirection

syntax match saylineItem /^\s*\%(-\|\d\{1,2}\.\)\ze\s\+\S/
syntax match saylineSpeaker /^\s*\zs\u[[:upper:][:digit:]'’.-]*\%([ +]\+\u[[:upper:][:digit:]'’.-]*\)*:\ze\%(\s\|$\)/
syntax match saylineNote /^\s*%\%(\s.*\)\?$/
syntax match saylineDivider /^\s*---\s*$/
syntax match saylineHeading /^\s*#\{1,3}\s.*$/
syntax match saylineKey /^\s*\a[^:]*\ze:/ contained
syntax match saylineValue /:\@1<=.*$/ contained
syntax region saylineHeader matchgroup=saylineFence start=/\%^\%uFEFF\?---\s*$/ end=/^---\s*$/ end=/^\s*$/ contains=saylineKey,saylineValue keepend

highlight default link saylineHeading Title
highlight default link saylineKey Identifier
highlight default link saylineValue String
highlight default link saylineDivider Special
highlight default link saylineFence Comment
highlight default link saylineNote Comment
highlight default link saylineSpeaker Type
highlight default link saylineDirection PreProc
highlight default link saylineItem Delimiter
highlight default link saylineMark Special
highlight default link saylinePause Special
highlight default link saylineBeat Special
highlight default link saylineBreath Special
highlight default link saylineTimed Special
highlight default link saylineTune Special
highlight default link saylineBraces Special
highlight default link saylineEscape SpecialChar
highlight default link saylineRaw String
highlight default link saylineLink Underlined
highlight default link saylineQuoted String
highlight default saylineStress cterm=italic gui=italic
highlight default saylineHeavy cterm=bold gui=bold
highlight default link saylineSoft Comment
highlight default link saylineQuick Identifier
highlight default link saylineSlow Function

let b:current_syntax = 'sayline'
