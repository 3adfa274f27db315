" `:make` puts the findings into the quickfix list, where no language client is wanted.
if exists('current_compiler')
  finish
endif
let current_compiler = 'sayline'

CompilerSet makeprg=sayline\ check\ %:S
" Columns count characters.
CompilerSet errorformat=%f:%l:%v\ \ %trror\ \ %m,%f:%l:%v\ \ %tarning\ \ %m,%f:%l:%v\ \ %tint\ \ %m,%-G%.%#
