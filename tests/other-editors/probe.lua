-- What a painter does in Neovim, without a hand: writes what came of it as JSON and ends.
local buffer = vim.api.nvim_get_current_buf()
local file = vim.api.nvim_buf_get_name(buffer)
local function at(line, character)
  return { textDocument = { uri = vim.uri_from_fname(file) }, position = { line = line, character = character } }
end
local function ask(method, params)
  local answers = vim.lsp.buf_request_sync(buffer, method, params, 20000) or {}
  for _, answer in pairs(answers) do
    return answer.result
  end
end
local function place(words)
  for index, line in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
    local from = line:find(words, 1, true)
    if from then
      return index - 1, from - 1
    end
  end
end
local function found()
  return vim.tbl_map(function(one)
    return one.message
  end, vim.diagnostic.get(buffer))
end
local function wait(condition)
  vim.wait(20000, condition, 50)
end

local out = {}
wait(function()
  return #found() > 0
end)
out.found = found()

local line, character = place('objekt')
local params = vim.tbl_extend('force', at(line, character), {
  range = { start = { line = line, character = character }, ['end'] = { line = line, character = character } },
  context = { diagnostics = vim.lsp.diagnostic and vim.lsp.diagnostic.get_line_diagnostics(buffer, line) or {} },
})
local fix = ask('textDocument/codeAction', params)[1]
if not fix.edit then
  fix = ask('codeAction/resolve', fix)
end
vim.lsp.util.apply_workspace_edit(fix.edit, 'utf-16')
wait(function()
  return #found() > 0 and not vim.tbl_contains(found(), out.found[1])
end)
out.mended = found()

line, character = place('oranges,')
out.hover = ask('textDocument/hover', at(line, character)).contents.value
vim.api.nvim_win_set_cursor(0, { line + 1, character })
vim.lsp.buf.rename('satsumas')
wait(function()
  return place('satsumas') ~= nil
end)

vim.api.nvim_buf_set_lines(buffer, -1, -1, false, { 'object   cat', '  pla' })
line = vim.api.nvim_buf_line_count(buffer) - 1
local offered = ask('textDocument/completion', at(line, 5))
out.offered = vim.tbl_map(function(one)
  return one.label
end, offered.items or offered)
vim.api.nvim_buf_set_lines(buffer, -2, -1, false, {})

local edits = ask('textDocument/formatting', vim.tbl_extend('force', at(0, 0), { options = { tabSize = 2, insertSpaces = true } }))
vim.lsp.util.apply_text_edits(edits, buffer, 'utf-16')
out.text = table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), '\n')
vim.fn.writefile({ vim.fn.json_encode(out) }, vim.env.ANSWER)
vim.cmd('qa!')
