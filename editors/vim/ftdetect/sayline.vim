autocmd BufRead,BufNewFile *.say setfiletype sayline
