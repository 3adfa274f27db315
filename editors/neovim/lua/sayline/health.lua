-- :checkhealth sayline: whether the program is there and starts, and where the colours come from.
local M = {}

-- The names differ between versions; 0.7 has a module where newer ones have a field.
local function reporter()
  local health = vim.health or require("health")
  local function named(new, old) return health[new] or health[old] end
  return {
    start = named("start", "report_start"),
    ok = named("ok", "report_ok"),
    info = named("info", "report_info"),
    warn = named("warn", "report_warn"),
    error = named("error", "report_error"),
  }
end

local function check_program(say, program)
  if vim.fn.executable(program) == 0 then
    say.error("there is no program `" .. program .. "`", {
      "Install it: README.md of the project says how.",
      "Or name it: require('sayline').setup({ cmd = { '/path/to/sayline', 'serve' } })",
    })
    return
  end
  local version = vim.fn.system({ program, "--version" })
  if vim.v.shell_error ~= 0 then
    say.error(vim.fn.exepath(program) .. " does not start: " .. vim.trim(version))
  else
    say.ok(vim.fn.exepath(program) .. " is " .. vim.trim(version))
  end
end

local function check_server(say)
  local get = vim.lsp.get_clients or vim.lsp.get_active_clients
  local running = vim.tbl_filter(function(client) return client.name == "sayline" end, get())
  if #running == 0 then
    say.info("no server runs now: one starts with the first .say file")
  else
    say.ok(#running .. (#running == 1 and " server runs" or " servers run"))
  end
end

local function check_colours(say)
  if vim.fn.has("nvim-0.9") == 1 then say.ok("colours come from the server") end
  if #vim.api.nvim_get_runtime_file("parser/sayline.so", false) > 0 then
    say.ok("the parser for sayline is installed")
  else
    say.info("no parser for sayline: colours by shape come from the syntax file")
  end
end

function M.check()
  local say = reporter()
  local sayline = require("sayline")
  say.start("Sayline")
  if not sayline.is_set_up() then
    say.error("setup was not called", { "Call require('sayline').setup() in your init.lua." })
  end
  check_program(say, sayline.program())
  check_server(say)
  check_colours(say)
end

return M
