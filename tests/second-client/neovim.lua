-- Diagnostics, hover, completion, rename and what else Neovim's built-in client can do, on a copy of the demo.
-- Ends with exit code 0 when everything held, 1 otherwise.
local workspace = vim.env.TAILCONE_WORKSPACE
local patience = 20000
local failures = 0

local function check(name, holds, seen)
  if holds then
    print("ok   " .. name .. "\n")
  else
    failures = failures + 1
    print("FAIL " .. name .. ": " .. vim.inspect(seen) .. "\n")
  end
end

local function open(name)
  vim.cmd("edit " .. workspace .. "/" .. name)
  return vim.api.nvim_get_current_buf()
end

--- Puts the cursor on the first letter of a text that stands in the buffer after another one.
local function go(text, after)
  vim.fn.cursor(1, 1)
  if after then vim.fn.search("\\V" .. after, "W") end
  vim.fn.search("\\V" .. text, "W")
end

local function run()
  local client = vim.lsp.start_client({
    name = "tailcone",
    cmd = { "node", vim.env.TAILCONE_SERVER, "--stdio" },
    root_dir = workspace,
    workspace_folders = { { uri = vim.uri_from_fname(workspace), name = "demo" } },
  })
  local kit = open("survey-rack.kit.yaml")
  vim.lsp.buf_attach_client(kit, client)
  local sound = open("survey-rack-0417.install.yaml")
  vim.lsp.buf_attach_client(sound, client)
  vim.wait(patience, function() return vim.lsp.buf_get_clients(sound)[client] ~= nil end)

  -- Diagnostics
  go("8 AWG", "id: P102A8")
  vim.cmd("normal! ciw12")
  vim.wait(patience, function() return #vim.diagnostic.get(sound) > 0 end)
  local codes = vim.tbl_map(function(one) return one.code or (one.user_data or {}).lsp and one.user_data.lsp.code end, vim.diagnostic.get(sound))
  check("a gauge too thin is found", vim.tbl_contains(codes, "wire-voltage-drop"), vim.diagnostic.get(sound))
  vim.cmd("silent undo")
  vim.wait(patience, function() return #vim.diagnostic.get(sound) == 0 end)
  check("and gone after undo", #vim.diagnostic.get(sound) == 0, vim.diagnostic.get(sound))

  -- Hover
  go("8 AWG", "id: P102A8")
  vim.lsp.buf.hover()
  local shown = ""
  vim.wait(patience, function()
    for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.api.nvim_win_get_config(window).relative ~= "" then
        shown = table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false), "\n")
      end
    end
    return shown ~= ""
  end)
  check("hover shows the calculation", shown:find("wire drop") ~= nil and shown:find("AC 43.13", 1, true) ~= nil, shown)
  vim.cmd("only")

  -- Completion
  local params = vim.lsp.util.make_position_params()
  params.position.character = params.position.character + #"8 AWG"
  local answer = vim.lsp.buf_request_sync(sound, "textDocument/completion", params, patience)
  local list = answer and answer[client] and answer[client].result or {}
  local items = vim.lsp.util.text_document_completion_list_to_complete_items(list, "")
  table.sort(list.items or {}, function(a, b) return a.sortText < b.sortText end)
  local first = (list.items or {})[1] or {}
  check("completion offers the gauges", #items > 10, #items)
  check("the thinnest that passes comes first, with what it leads to", first.label == "8 AWG" and (first.detail or ""):find("path drop") ~= nil, first)
  check("no snippet for a client that takes none", first.insertTextFormat ~= 2, first)

  -- Definition, references
  go("CHILLER", "to: CHILLER")
  local place = vim.lsp.util.make_position_params()
  answer = vim.lsp.buf_request_sync(sound, "textDocument/definition", place, patience)
  local target = answer and answer[client] and answer[client].result or {}
  check("definition leads into the kit", (target.uri or ""):find("survey%-rack%.kit%.yaml$") ~= nil, target)

  -- Rename, over records that are open and records that are not
  vim.lsp.buf.rename("COOLER")
  local function text(name)
    return table.concat(vim.api.nvim_buf_get_lines(vim.fn.bufnr(workspace .. "/" .. name), 0, -1, false), "\n")
  end
  vim.wait(patience, function() return text("survey-rack-0417-faulty.install.yaml"):find("COOLER") ~= nil end)
  for _, name in ipairs({ "survey-rack.kit.yaml", "survey-rack-0417.install.yaml", "survey-rack-0417-faulty.install.yaml" }) do
    local now = text(name):gsub("%w+%-CHILLER", ""):gsub("CHILLER%-%w+", "") -- other things, named after it
    check("rename reaches " .. name, now:find("COOLER") ~= nil and now:find("CHILLER") == nil, now:match("[^\n]*CHILLER[^\n]*"))
  end
  vim.wait(2000, function() return false end, 500)
  check("nothing is wrong after the rename", #vim.diagnostic.get(sound) == 0, vim.diagnostic.get(sound))

  -- Symbols
  answer = vim.lsp.buf_request_sync(sound, "textDocument/documentSymbol", { textDocument = vim.lsp.util.make_text_document_params() }, patience)
  check("symbols", #(answer and answer[client] and answer[client].result or {}) > 5, answer)

  vim.lsp.stop_client(client)
end

local ran, fault = pcall(run)
if not ran then check("the run itself", false, fault) end
print(failures == 0 and "all held\n" or (failures .. " failed\n"))
vim.cmd(failures == 0 and "qall!" or "cquit 1")
