-- How a script behaves in a window: soft wrapping, notes as comments, a fold for each section.
if vim.b.did_ftplugin then return end
vim.b.did_ftplugin = 1

vim.opt_local.commentstring = "% %s"
vim.opt_local.comments = ":%,fb:-"
vim.opt_local.wrap = true
vim.opt_local.linebreak = true
-- A line end inside a thought means nothing, but nobody wants one put there while typing.
vim.opt_local.formatoptions:remove({ "t", "a" })
vim.opt_local.foldmethod = "expr"
vim.opt_local.foldexpr = "v:lua.require'sayline'.fold_level(v:lnum)"
vim.opt_local.foldlevel = 99

vim.b.undo_ftplugin = "setlocal commentstring< comments< wrap< linebreak< formatoptions<"
  .. " foldmethod< foldexpr< foldlevel<"
