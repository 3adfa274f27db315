-- Starts `sayline serve` for .say files. Works from Neovim 0.7.2 on: what newer versions bring is
-- used where it is there (vim.lsp.start, inlay hints, semantic tokens), and the seconds at the end of
-- each thought are drawn here where it is not.
local M = {}

local defaults = {
  cmd = { "sayline", "serve" },
  settings = {}, -- the server's, as docs/options.md lists them: { breath_limit = 5 }
  on_attach = nil, -- called with (client, buffer)
  player = nil, -- what plays a sound file, such as { "mpv", "--really-quiet" }
  times = true, -- seconds at the end of each thought, and run_time() for a status line
}
local options = vim.deepcopy(defaults)
local set_up = false
local hints = vim.api.nvim_create_namespace("sayline-times")
local buffers = {} -- by buffer: client id, text for the status line, whether a question is under way
local clients = {} -- by root folder, where vim.lsp.start is missing

local function tell(message)
  vim.notify("Sayline: " .. message, vim.log.levels.WARN)
end

-- The folder whose settings count: the nearest with .sayline, else the script's own.
local function root_of(buffer)
  local name = vim.api.nvim_buf_get_name(buffer)
  local folder = name ~= "" and vim.fn.fnamemodify(name, ":p:h") or vim.fn.getcwd()
  local settings = vim.fn.finddir(".sayline", vim.fn.escape(folder, " ,;") .. ";")
  return settings ~= "" and vim.fn.fnamemodify(settings, ":p:h:h") or folder
end

local function clock(seconds)
  local whole = math.floor(seconds + 0.5)
  if whole >= 3600 then
    return string.format("%d:%02d:%02d", whole / 3600, whole % 3600 / 60, whole % 60)
  end
  return string.format("%d:%02d", whole / 60, whole % 60)
end

local function run_text(run)
  local target = run.target
  if type(target) ~= "table" then return clock(run.seconds) end
  local aim = clock(target.low) .. "-" .. clock(target.high)
  if target.low == target.high then aim = clock(target.high) end
  if target.low == 0 then aim = clock(target.high) .. " max" end
  return clock(run.seconds) .. " of " .. aim
end

local function text_document(buffer)
  return { uri = vim.uri_from_bufnr(buffer) }
end

-- Asks the server in its place in the order of changes: Neovim sends what is pending first.
local function ask(buffer, method, params, answer)
  local state = buffers[buffer]
  local client = state and vim.lsp.get_client_by_id(state.client)
  if not client then return answer(nil) end
  local function handler(err, result) answer(not err and result or nil, err) end
  local sent
  if vim.fn.has("nvim-0.11") == 1 then
    sent = client:request(method, params, handler, buffer)
  else
    sent = client.request(method, params, handler, buffer)
  end
  if not sent then answer(nil) end
end

-- Draws inlay hints as virtual text, for versions that cannot. Ours stand at line ends.
local function draw_hints(buffer, list)
  vim.api.nvim_buf_clear_namespace(buffer, hints, 0, -1)
  local last = vim.api.nvim_buf_line_count(buffer) - 1
  for _, hint in ipairs(list) do
    local label = hint.label
    if type(label) == "table" then
      label = table.concat(vim.tbl_map(function(part) return part.value end, label))
    end
    if hint.position.line <= last then
      vim.api.nvim_buf_set_extmark(buffer, hints, hint.position.line, 0, {
        virt_text = { { label, "SaylineTime" } },
        hl_mode = "combine",
        priority = 100, -- before the sentence of a finding, which may be cut at the window's edge
      })
    end
  end
end

local function refresh_hints(buffer, done)
  if vim.lsp.inlay_hint then return done() end
  local params = {
    textDocument = text_document(buffer),
    range = {
      start = { line = 0, character = 0 },
      ["end"] = { line = vim.api.nvim_buf_line_count(buffer), character = 0 },
    },
  }
  ask(buffer, "textDocument/inlayHint", params, function(list)
    if list and vim.api.nvim_buf_is_valid(buffer) then draw_hints(buffer, list) end
    done()
  end)
end

-- One question at a time: what changes meanwhile is asked for once the answer is there.
local function refresh(buffer)
  local state = buffers[buffer]
  if not state then return end
  state.stale = true
  if state.asking then return end
  state.asking, state.stale = true, false
  ask(buffer, "sayline/times", { textDocument = text_document(buffer) }, function(times)
    if times then
      state.text = run_text(times)
      vim.cmd("redrawstatus")
    end
    refresh_hints(buffer, function()
      state.asking = false
      if state.stale then refresh(buffer) end
    end)
  end)
end

-- "1:52 of 2:00 max" for a status line; empty where there is no script.
function M.run_time(buffer)
  if not buffer or buffer == 0 then buffer = vim.api.nvim_get_current_buf() end
  local state = buffers[buffer]
  return state and state.text or ""
end

-- The sections with their times, in the location list.
function M.sections()
  local buffer = vim.api.nvim_get_current_buf()
  ask(buffer, "sayline/times", { textDocument = text_document(buffer) }, function(times)
    if not times then return tell("the server gave no times; see :LspLog") end
    local rows = { { bufnr = buffer, lnum = 1, text = "Whole script: " .. run_text(times) } }
    for _, section in ipairs(times.sections) do
      local indent = string.rep("  ", section.level)
      rows[#rows + 1] = {
        bufnr = buffer,
        lnum = section.range.start.line + 1,
        text = indent .. section.name .. ": " .. run_text(section),
      }
    end
    vim.fn.setloclist(0, {}, " ", { title = "Times of the sections", items = rows })
    vim.cmd("lopen")
  end)
end

-- The script in another form, beside it unless a file is named: "shore.srt", or "shore.page.html"
-- where two forms end alike. What is there already is replaced only where that is said.
function M.export(target, file, replace)
  local buffer = vim.api.nvim_get_current_buf()
  local params = { textDocument = text_document(buffer), target = target }
  local ending = target
  for _, each in ipairs(M.targets(buffer)) do
    if each.name == target and each.file ~= target then ending = target .. "." .. each.file end
  end
  if not file or file == "" then
    file = vim.api.nvim_buf_get_name(buffer):gsub("%.say$", "") .. "." .. ending
  end
  if not replace and vim.fn.filereadable(vim.fn.fnamemodify(file, ":p")) == 1 then
    return tell(file .. " is there already; :SaylineExport! replaces it")
  end
  ask(buffer, "sayline/export", params, function(made, problem)
    if not made then return tell(problem and problem.message or "the server made nothing; see :LspLog") end
    local out, why = io.open(vim.fn.fnamemodify(file, ":p"), "wb")
    if not out then
      local folder = vim.fn.fnamemodify(file, ":p:h")
      if vim.fn.isdirectory(folder) == 0 then why = "there is no folder " .. folder end
      return tell("cannot write: " .. why)
    end
    out:write(made.text)
    out:close()
    vim.api.nvim_echo({ { "wrote " .. file } }, true, {})
  end)
end

-- What plays a sound file, in the order of preference; `options.player` comes first.
local players = {
  { "pw-play" }, { "paplay" }, { "aplay", "-q" }, { "afplay" }, { "ffplay", "-v", "quiet", "-nodisp", "-autoexit" },
}

local function player()
  if options.player then return vim.deepcopy(options.player) end
  for _, each in ipairs(players) do
    if vim.fn.executable(each[1]) == 1 then return vim.deepcopy(each) end
  end
end

-- Says the thought at the cursor, by a machine's voice: for rhythm and length, no model for the read.
function M.hear()
  local command = player()
  if not command then
    local names = table.concat(vim.tbl_map(function(each) return each[1] end, players), ", ")
    return tell("nothing here plays a sound; install one of " .. names .. ", or set `player`")
  end
  local buffer = vim.api.nvim_get_current_buf()
  local file = vim.fn.tempname() .. ".wav"
  local client = buffers[buffer] and vim.lsp.get_client_by_id(buffers[buffer].client)
  local encoding = client and client.offset_encoding or "utf-16"
  local params = {
    textDocument = text_document(buffer),
    position = vim.lsp.util.make_position_params(0, encoding).position,
    file = vim.uri_from_fname(file),
  }
  ask(buffer, "sayline/speak", params, function(spoken, problem)
    if not spoken then return tell(problem and problem.message or "the server said nothing; see :LspLog") end
    command[#command + 1] = file
    local job = vim.fn.jobstart(command, { on_exit = function() os.remove(file) end })
    if job <= 0 then tell(command[1] .. " does not start") end
    vim.api.nvim_echo({ { string.format("%.1f s, by a machine's voice", spoken.seconds) } }, false, {})
  end)
end

-- What the server can make: each a name, a summary and the ending of its file's name.
function M.targets(buffer)
  local state = buffers[buffer]
  local client = state and vim.lsp.get_client_by_id(state.client)
  local known = client and client.server_capabilities.experimental
  return known and known.sayline and known.sayline.targets or {}
end

local stages = { "draft", "mark", "read" }

-- Writes the stage into the header: draft, mark or read. A script without a header gets one.
function M.set_stage(stage)
  if not vim.tbl_contains(stages, stage) then
    return tell("no stage is called `" .. stage .. "`; it is " .. table.concat(stages, ", "))
  end
  local buffer = vim.api.nvim_get_current_buf()
  local lines = vim.api.nvim_buf_get_lines(buffer, 0, -1, false)
  local row = "stage: " .. stage
  if not (lines[1] or ""):match("^\239?\187?\191?%-%-%-%s*$") then
    vim.api.nvim_buf_set_lines(buffer, 0, 0, false, { "---", row, "---", "" })
    return
  end
  for index = 2, #lines do
    if lines[index]:lower():match("^%s*stage%s*:") then
      vim.api.nvim_buf_set_lines(buffer, index - 1, index, false, { row })
      return
    end
    if not lines[index]:match("^%s*%a[^:]*:") then
      vim.api.nvim_buf_set_lines(buffer, index - 1, index - 1, false, { row })
      return
    end
  end
  vim.api.nvim_buf_set_lines(buffer, -1, -1, false, { row, "---" })
end

-- Has the server change the script, which it does by a request of its own.
local function whole_script(command)
  return function()
    local buffer = vim.api.nvim_get_current_buf()
    local before = vim.api.nvim_buf_get_changedtick(buffer)
    local params = { command = command, arguments = { vim.uri_from_bufnr(buffer) } }
    ask(buffer, "workspace/executeCommand", params, function()
      vim.schedule(function()
        if vim.api.nvim_buf_get_changedtick(buffer) == before then
          vim.notify("Sayline: nothing to change", vim.log.levels.INFO)
        end
      end)
    end)
  end
end

function M.program() return options.cmd[1] end

function M.is_set_up() return set_up end

-- For 'foldexpr': a heading opens a fold of its level.
function M.fold_level(line_number)
  local signs = vim.fn.getline(line_number):match("^(##?#?)[ \t]+%S")
  return signs and ">" .. #signs or "="
end

-- Colours for what the server says of pairs of marks (Neovim 0.9 and newer).
local function link_tokens()
  local links = {
    heading = "Title", key = "Identifier", value = "String", speaker = "Type", note = "Comment",
    direction = "PreProc", mark = "Special",
  }
  for token, group in pairs(links) do
    vim.api.nvim_set_hl(0, "@lsp.type." .. token .. ".sayline", { link = group, default = true })
  end
  local said = {
    stress = { italic = true }, heavy = { bold = true }, soft = { link = "Comment" },
    quick = { link = "Identifier" }, slow = { link = "Function" }, quoted = { link = "String" },
  }
  for how, look in pairs(said) do
    look.default = true
    vim.api.nvim_set_hl(0, "@lsp.typemod.words." .. how .. ".sayline", look)
  end
end

-- Uses grammar/queries of this project, if a parser for sayline is installed in Neovim.
local function start_tree_sitter(buffer)
  local ts = vim.treesitter
  if not (ts and ts.start) or #vim.api.nvim_get_runtime_file("parser/sayline.so", false) == 0 then
    return
  end
  local here = vim.fn.fnamemodify(debug.getinfo(1, "S").source:sub(2), ":p:h")
  local file = here .. "/../../../../grammar/queries/highlights.scm"
  if vim.fn.filereadable(file) == 1 then
    local set = ts.query and ts.query.set or ts.set_query or require("vim.treesitter.query").set_query
    set("sayline", "highlights", table.concat(vim.fn.readfile(file), "\n"))
  end
  pcall(ts.start, buffer, "sayline")
end

-- Keeps times and hints in step with the text, whoever changes it.
local function follow(buffer)
  local state = buffers[buffer]
  local function changed()
    if buffers[buffer] ~= state then return true end -- detach: another server took over
    vim.schedule(function() refresh(buffer) end)
  end
  vim.api.nvim_buf_attach(buffer, false, {
    on_lines = changed,
    on_reload = changed,
    on_detach = function()
      if buffers[buffer] == state then buffers[buffer] = nil end
    end,
  })
  -- Not at once: the buffer counts as attached only after this callback.
  vim.schedule(function() refresh(buffer) end)
end

local function attached(client, buffer)
  buffers[buffer] = { client = client.id }
  -- Versions from 0.8 on do so themselves.
  if vim.bo[buffer].omnifunc == "" then vim.bo[buffer].omnifunc = "v:lua.vim.lsp.omnifunc" end
  if options.times then
    if vim.lsp.inlay_hint then pcall(vim.lsp.inlay_hint.enable, true, { bufnr = buffer }) end
    follow(buffer)
  end
  vim.api.nvim_buf_create_user_command(buffer, "SaylineSections", M.sections, {
    desc = "List the sections with their times",
  })
  local command = vim.api.nvim_buf_create_user_command
  command(buffer, "SaylineStage", function(given) M.set_stage(given.args) end, {
    desc = "Say how far the script is",
    nargs = 1,
    complete = function() return stages end,
  })
  command(buffer, "SaylineMark", whole_script("sayline.markScript"), {
    desc = "Put in the few marks that a reader would likely follow",
  })
  command(buffer, "SaylineSplit", whole_script("sayline.splitScript"), {
    desc = "Give every sentence its own thought",
  })
  command(buffer, "SaylineExport", function(given) M.export(given.fargs[1], given.fargs[2], given.bang) end, {
    bang = true,
    desc = "Write the script in another form: captions, a page, a running order",
    nargs = "+",
    complete = function(_, line)
      if line:match("^%S+%s+%S+%s") then return vim.fn.getcompletion(line:match("%S*$"), "file") end
      return vim.tbl_map(function(each) return each.name end, M.targets(buffer))
    end,
  })
  command(buffer, "SaylineHear", M.hear, {
    desc = "Hear the thought at the cursor, by a machine's voice",
  })
  command(buffer, "SaylineMend", whole_script("sayline.fixAll"), {
    desc = "Mend what changes no spoken word",
  })
  if options.on_attach then options.on_attach(client, buffer) end
end

-- With other settings the times are others; asked for once this answer is on its way.
local function answer_settings(...)
  vim.schedule(function()
    for buffer in pairs(buffers) do refresh(buffer) end
  end)
  return vim.lsp.handlers["workspace/configuration"](...)
end

-- Starts the server for a buffer, or joins the one that serves its folder.
function M.start(buffer)
  if not buffer or buffer == 0 then buffer = vim.api.nvim_get_current_buf() end
  local program = options.cmd[1]
  if vim.fn.executable(program) == 0 then
    tell("there is no program `" .. program .. "`, so there are no times and no findings. "
      .. "Install it, or name it: require('sayline').setup({ cmd = { '/path/to/sayline', 'serve' } })")
    return
  end

  local settings = vim.tbl_isempty(options.settings) and vim.empty_dict() or options.settings
  local root = root_of(buffer)
  local config = {
    name = "sayline",
    cmd = options.cmd,
    root_dir = root,
    settings = { sayline = settings },
    get_language_id = function() return "sayline" end,
    handlers = { ["workspace/configuration"] = answer_settings },
    -- Versions that do not say they answer for settings are not asked: tell the server unasked.
    on_init = function(client)
      if not vim.lsp.start then
        client.notify("workspace/didChangeConfiguration", { settings = client.config.settings })
      end
    end,
    on_attach = attached,
    on_exit = function()
      clients[root] = nil
    end,
  }
  if vim.lsp.start then
    vim.lsp.start(config, { bufnr = buffer })
    return
  end
  clients[root] = clients[root] or vim.lsp.start_client(config)
  if clients[root] then vim.lsp.buf_attach_client(buffer, clients[root]) end
end

function M.setup(chosen)
  options = vim.tbl_deep_extend("force", vim.deepcopy(defaults), chosen or {})
  set_up = true
  vim.api.nvim_set_hl(0, "SaylineTime", { link = "Comment", default = true })
  if vim.fn.has("nvim-0.9") == 1 then link_tokens() end
  local group = vim.api.nvim_create_augroup("sayline", { clear = true })
  vim.api.nvim_create_autocmd("FileType", {
    group = group,
    pattern = "sayline",
    callback = function(event)
      start_tree_sitter(event.buf)
      M.start(event.buf)
    end,
  })
end

return M
