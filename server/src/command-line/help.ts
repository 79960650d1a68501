export const helpText = `Tailcone checks aircraft installation records with live engineering
calculations.

  tailcone check [paths]          check records; folders are searched for them
  tailcone compare <base> <head>  what a change does: two files or two folders
  tailcone compare --git A..B [paths]
                                  the same for two revisions; A...B from where
                                  they parted; A alone against the work tree
  tailcone worksheet <record>     every value of an install record, worked out
  tailcone explain [area]         the areas of rules; the rules of one
  tailcone explain <rule>         what a rule finds, why, by which source
  tailcone explain keys <place>   keys there: install, install.wires, kit ...
  tailcone merge <reports>        one report of the JSON reports of many parts

Records are files named *.airframe.yaml, *.kit.yaml and *.install.yaml.

  --report FORM[:FILE]    form of the output (default text), or of a file; may
                          be repeated. check and merge: text, json, sarif,
                          junit, github, gitlab; compare: text, json,
                          markdown, html; worksheet: text, json
  --fail-on error|warning|information
                          least severity that exits with 1; of new findings
                          for compare, which fails on none without it, and
                          for check with --base or --baseline (default error)
  --severity RULE=LEVEL   give a rule another severity, or 'off'; may be
                          repeated
  --margin-floor [RULE=]SHARE
                          fail where a margin is less, such as 10% of the limit
  --margin-erosion [RULE=]SHARE
                          fail where a margin lost more than this share of what
                          it was; compare, and check with --base

For check:
  --brief                 one line for each finding
  --only RULE             findings of this rule alone; may be repeated
  --base REVISION         findings that this git revision has are known
  --baseline FILE         findings that the file lists are known
  --write-baseline FILE   list the errors and warnings of now in a file
  --changed-since REVISION
                          only records that differ from it, and those that
                          name one that does
  --part 2/5              the second of five parts of the records
  --jobs NUMBER           threads; as many as processors, unless you say so

  --help, --version

Exit codes: 0 nothing at or above the threshold, 1 findings, 2 the tool could
not do its work.

A calculation aid: it supports, and does not replace, approved data, the maker's
instructions and a licensed person's judgement; local rules prevail.
`;
