export const helpText = `Tailcone checks aircraft installation records with live engineering
calculations.

  tailcone check [paths]         check records; folders are searched for them
  tailcone worksheet <record>    every value of an install record, worked out
  tailcone explain [rule]        what a rule finds, why, by which source

Records are files named *.airframe.yaml, *.kit.yaml and *.install.yaml.

  --report text|json             form of the output (default text)
  --fail-on error|warning|information
                                 least severity that makes 'check' exit with 1
                                 (default error)
  --severity RULE=LEVEL          give a rule another severity, or 'off';
                                 may be repeated
  --brief                        one line for each finding
  --help, --version

Exit codes: 0 nothing at or above the threshold, 1 findings, 2 the tool could
not do its work.

A calculation aid: it supports, and does not replace, approved data, the maker's
instructions and a licensed person's judgement; local rules prevail.
`;
