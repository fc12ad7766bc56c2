" What a painter does in Vim, without a hand: writes what came of it as JSON and ends.
function! s:Wait(condition) abort
  let l:left = 400
  while !a:condition() && l:left > 0
    sleep 50m
    let l:left -= 1
  endwhile
endfunction
function! s:Found() abort
  return map(copy(ale#engine#GetLoclist(bufnr(''))), 'v:val.text')
endfunction
function! s:Go(words) abort
  call cursor(1, 1)
  call search('\V' . a:words, 'c')
endfunction

let s:out = {}
call s:Wait({-> len(s:Found()) > 0})
let s:out.found = s:Found()

" What is typed waits until ALE asks.
call s:Go('objekt')
call feedkeys("1\<CR>", 't')
ALECodeAction
call s:Wait({-> search('objekt', 'nw') == 0})
call ale#Queue(0)
call s:Wait({-> len(s:Found()) > 0 && index(s:Found(), s:out.found[0]) < 0})
let s:out.mended = s:Found()

call s:Go('oranges,')
ALEHover
call s:Wait({-> len(popup_list()) > 0})
let s:out.hover = join(map(popup_list(), 'join(getbufline(winbufnr(v:val), 1, "$"), "\n")'), "\n")
call popup_clear(1)

call feedkeys("\<C-U>satsumas\<CR>", 't')
ALERename
call s:Wait({-> search('satsumas', 'nw') > 0})

call append('$', ['object   cat', '  pla'])
call cursor(line('$'), 5)
call feedkeys("A\<C-X>\<C-O>\<C-R>=execute('let g:offered = complete_info([\"items\"]).items')\<CR>\<Esc>", 'tx')
let s:out.offered = map(get(g:, 'offered', []), 'v:val.word')
call deletebufline('%', line('$'))

normal gggqG
let s:out.text = join(getline(1, '$'), "\n")
call writefile([json_encode(s:out)], $ANSWER)
qall!
