-- Headless Neovim against the built server, as a writer would meet it: findings, hover, times, and
-- the fix that splits a run-on thought. Run by `neovim` beside this file, which sets
-- SAYLINE_PROGRAM, SAYLINE_PLUGIN and SAYLINE_SCRIPT. Methods are those of LSP 3.17.
local wait_ms = 20000

local function fail(message)
  io.stderr:write("neovim: " .. message .. "\n")
  vim.cmd("cquit 1")
end

local function wait_for(what, condition)
  local value
  local seen = vim.wait(wait_ms, function()
    value = condition()
    return value and true or false
  end, 20)
  if not seen then fail("waited " .. wait_ms / 1000 .. " s in vain for " .. what) end
  return value
end

local function check(condition, message)
  if not condition then fail(message) end
end

local function request(method, params)
  local answers = vim.lsp.buf_request_sync(0, method, params, wait_ms)
  local _, answer = next(answers or {})
  check(answer, "no answer to " .. method)
  check(not answer.err and not answer.error, method .. " failed: " .. vim.inspect(answer))
  return answer.result
end

local function place(line, character)
  return { line = line, character = character }
end

local function buffer_text()
  return table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, false), "\n")
end

-- The 0-based line and column where `text` stands, alone in the script.
local function find(text)
  for index, line in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, false)) do
    local column = line:find(text, 1, true)
    if column then return index - 1, column - 1 end
  end
  fail("the script has no " .. text)
end

local function findings_of(line)
  return vim.tbl_filter(function(finding)
    return finding.lnum <= line and line <= finding.end_lnum and finding.source == "sayline"
  end, vim.diagnostic.get(0))
end

local function hover_text(line, character)
  local result = request("textDocument/hover", {
    textDocument = { uri = vim.uri_from_bufnr(0) },
    position = place(line, character),
  })
  check(result and result.contents, "no hover at line " .. line + 1)
  return type(result.contents) == "table" and result.contents.value or result.contents
end

local function run_seconds()
  local minutes, seconds = require("sayline").run_time():match("^(%d+):(%d%d)")
  return tonumber(minutes) * 60 + tonumber(seconds)
end

local run_on = "We put the square down on the rock. We count what sits inside it. We write the number on the sheet."

local heard = vim.fn.tempname()

local function main()
  vim.opt.runtimepath:prepend(os.getenv("SAYLINE_PLUGIN"))
  vim.cmd("filetype plugin on")
  vim.cmd("syntax on")
  require("sayline").setup({
    player = { "sh", "-c", "wc -c < $0 > " .. heard },
    cmd = { os.getenv("SAYLINE_PROGRAM"), "serve" },
    settings = { pace = "0.5x" },
  })
  vim.cmd("edit " .. vim.fn.fnameescape(os.getenv("SAYLINE_SCRIPT")))
  check(vim.bo.filetype == "sayline", "a .say file has the file type '" .. vim.bo.filetype .. "'")

  -- Findings, under the words that they are about.
  local line, column = find(run_on)
  wait_for("a finding on the three sentences in one thought", function()
    return #findings_of(line) > 0
  end)
  local calm = find("If you can count to ten")
  check(#findings_of(calm) == 0, "a short thought has findings: " .. vim.inspect(findings_of(calm)))

  -- Hover: a range of seconds in the form that is used everywhere.
  local text = hover_text(line, column + #"We put the ")
  check(text:find("%d s") or text:find("%d:%d%d"), "the hover has no time: " .. text)

  -- Times: in the status line, and at the end of each thought.
  wait_for("the run time", function()
    return require("sayline").run_time():match("^%d+:%d%d of 0:40 max$")
  end)
  -- It would run 19 seconds: at half the speed its 14 seconds of speech take twice as long.
  wait_for("the pace that is set to count", function() return run_seconds() > 28 end)
  local hints = wait_for("seconds at the end of the thoughts", function()
    if vim.lsp.inlay_hint then
      local shown = vim.lsp.inlay_hint.get({ bufnr = 0 })
      return #shown > 0 and vim.tbl_map(function(item) return item.inlay_hint.label end, shown)
    end
    local space = vim.api.nvim_get_namespaces()["sayline-times"]
    local marks = vim.api.nvim_buf_get_extmarks(0, space, 0, -1, { details = true })
    return #marks > 0 and vim.tbl_map(function(mark) return mark[4].virt_text[1][1] end, marks)
  end)
  check(#hints == 5, "five thoughts, but " .. #hints .. " times beside them")
  check(hints[1]:find("%d s"), "no seconds: " .. vim.inspect(hints[1]))
  vim.cmd("SaylineSections")
  local rows = vim.fn.getloclist(0)
  if #rows == 0 then
    rows = wait_for("the list of sections", function()
      local list = vim.fn.getloclist(0)
      return #list > 0 and list
    end)
  end
  check(#rows == 3, "the script and two sections, but the list has " .. #rows .. " rows")
  check(rows[2].text:find("Hello: 0:%d%d of 0:10 max"), "a section without its time: " .. rows[2].text)
  vim.cmd("lclose")

  -- The fix: each sentence stands as its own paragraph, and every word is kept.
  local range = { start = place(line, column), ["end"] = place(line, column + #run_on) }
  local actions = request("textDocument/codeAction", {
    textDocument = { uri = vim.uri_from_bufnr(0) },
    range = range,
    context = { diagnostics = {}, only = { "quickfix" } },
  })
  local split
  for _, action in ipairs(actions) do
    if action.title:find("[Ss]plit") then
      split = action
      break
    end
  end
  check(split, "no fix splits the thought; offered are " .. vim.inspect(vim.tbl_map(function(action)
    return action.title
  end, actions)))
  if not split.edit then split = request("codeAction/resolve", split) end
  vim.lsp.util.apply_workspace_edit(split.edit, "utf-16")
  local wanted = "JO: We put the square down on the rock.\n\nWe count what sits inside it.\n\n"
    .. "We write the number on the sheet.\n"
  check(buffer_text():find(wanted, 1, true), "the split thought reads:\n" .. buffer_text())
  wait_for("the finding to go", function() return #findings_of(line) == 0 end)

  -- A timed pause holds as written, whoever adds it: docs/format.md.
  local before = run_seconds()
  vim.api.nvim_buf_set_lines(0, -1, -1, false, { "", "(9.5)" })
  wait_for("a run time longer by the pause", function()
    local longer = run_seconds() - before
    return longer == 9 or longer == 10
  end)

  -- Colours by shape, where nothing better is at hand.
  local heading = find("# Hello")
  local group = vim.fn.synIDattr(vim.fn.synID(heading + 1, 3, 1), "name")
  check(group == "saylineHeading", "a heading is coloured as '" .. group .. "'")
  check(vim.fn.foldlevel(heading + 2) == 1, "a section does not fold")

  -- What is chosen while typing: set here, or by Neovim itself.
  check(vim.bo.omnifunc:find("lsp"), "no completion of marks: omnifunc is '" .. vim.bo.omnifunc .. "'")

  -- A stage that is none is written nowhere.
  vim.cmd("silent! SaylineStage reed")
  check(not buffer_text():find("reed", 1, true), "a stage `reed` in the header")

  -- From draft to marks by two commands.
  vim.cmd("SaylineStage read")
  check(buffer_text():find("\nstage: read\n---\n", 1, true), "no stage in the header:\n" .. buffer_text())
  check(not buffer_text():find("stage: mark", 1, true), "two stages in the header")
  vim.cmd("SaylineStage mark")
  local unmarked = buffer_text()
  vim.cmd("SaylineMark")
  wait_for("the first marks", function() return buffer_text() ~= unmarked end)
  check(buffer_text():gsub("[*/~.,]", ""):gsub("%s+", " ") == unmarked:gsub("[*/~.,]", ""):gsub("%s+", " "),
    "the marks have changed a word:\n" .. buffer_text())

  -- Captions into a file of one's own choice; a form that is not there is named and nothing written.
  local captions = vim.fn.tempname() .. ".srt"
  vim.cmd("SaylineExport srt " .. captions)
  wait_for("the captions", function() return vim.fn.filereadable(captions) == 1 end)
  check(table.concat(vim.fn.readfile(captions), "\n"):find("00:00:00,000 --> ", 1, true), "no captions were written")
  local names = vim.fn.getcompletion("SaylineExport ", "cmdline")
  check(vim.tbl_contains(names, "vtt") and vim.tbl_contains(names, "svg"), "the forms do not complete")

  local mended = vim.fn.readfile(captions)
  vim.cmd("SaylineExport csv " .. captions)
  vim.wait(200)
  check(vim.deep_equal(vim.fn.readfile(captions), mended), "a file that was there is replaced unasked")
  vim.cmd("SaylineExport! csv " .. captions)
  wait_for("the file that is replaced", function() return vim.fn.readfile(captions)[1]:find("^kind,in,out") end)

  -- A thought is heard: what plays it here keeps the file and tells its size.
  vim.cmd("SaylineHear")
  wait_for("the sound", function() return vim.fn.filereadable(heard) == 1 and vim.fn.readfile(heard)[1] end)
  check(tonumber(vim.fn.readfile(heard)[1]) > 32000, "less than a second is heard")

  vim.cmd("checkhealth sayline")
  local report = buffer_text()
  check(report:find("is sayline %d"), "the health check does not name the program:\n" .. report)
  check(report:find("1 server runs", 1, true), "the health check sees no server:\n" .. report)
  check(not report:find("ERROR", 1, true), "the health check finds fault:\n" .. report)

  print("neovim: findings, hover, times, fixes, stages, marks and the health check work\n")
  vim.cmd("qall!")
end

local fine, reason = xpcall(main, debug.traceback)
if not fine then fail(reason) end
