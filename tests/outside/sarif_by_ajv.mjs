// Holds SARIF logs to the schema of the standard by ajv, a validator that is none of ours.
// Use: node sarif_by_ajv.mjs FOLDER-OF-NODE-MODULES SCHEMA LOG...   (CI does, where node is there)
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";

const [, , modules, schemaFile, ...logs] = process.argv;
const require = createRequire(`${modules}/`);
const Ajv = require("ajv-draft-04");
const formats = require("ajv-formats");

const ajv = new Ajv({ allErrors: true, strict: false });
formats(ajv);
const validate = ajv.compile(JSON.parse(readFileSync(schemaFile, "utf8")));
let wrong = logs.length === 0 ? 1 : 0;
for (const log of logs) {
  const valid = validate(JSON.parse(readFileSync(log, "utf8")));
  console.log(`${log}: ${valid ? "valid" : "not valid"}`);
  for (const error of valid ? [] : validate.errors) {
    console.log(`  ${error.instancePath} ${error.message}`);
  }
  wrong += valid ? 0 : 1;
}
process.exit(wrong);
