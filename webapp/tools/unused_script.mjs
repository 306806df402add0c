// Leave out of Pyodide's script what nothing can call: graphics, sound, windows and their events,
// half of it, which each start would read and lay out for whatever package may come.
//
//   node unused_script.mjs SCRIPT OUT IMPORTED CALLER…
//
// IMPORTED is a list, as JSON, of the names that machine code asks of the script; a CALLER is
// another script that reads the module by name. What stands in the module is kept if it does
// something when it is read, or if something kept names it; a function that is handed to machine
// code, if that asks for it. Of the wrappers of exports slim_runtime.py says which stay.
import { readFile, writeFile } from "node:fs/promises";
import { parse } from "acorn";
import { full } from "acorn-walk";

/** What is only used on a page, and by what looks first whether it is there. */
const ON_A_PAGE = "Browser";

/**
 * A piece of the script, and what must be named for it to be kept: a variable, or a member of the
 * module; with neither it always is.
 * @typedef {{node: any, variable?: string, member?: string, asked?: string}} Piece
 */

const [script, out, imported, ...callers] = process.argv.slice(2);
const text = await readFile(script, "utf8");
/** @type {Set<string>} */
const asked = new Set(JSON.parse(await readFile(imported, "utf8")));

/** The statements of the module, which is one long function. @type {any[]} */
let statements = [];
full(parse(text, { ecmaVersion: 2022 }), (/** @type {any} */ node) => {
  if (node.type === "BlockStatement" && node.body.length > statements.length) {
    statements = node.body;
  }
});

/** Whether reading an expression does nothing but make its value. @param {any} node */
function isPure(node) {
  switch (node?.type) {
    case undefined:
    case "ArrowFunctionExpression":
    case "FunctionExpression":
    case "Identifier":
    case "Literal":
    case "MemberExpression":
      return true;
    case "ArrayExpression":
      return node.elements.every(isPure);
    case "ObjectExpression":
      return node.properties.every(
        (/** @type {any} */ one) => one.type === "Property" && !one.computed && isPure(one.value),
      );
    default:
      return false;
  }
}

/** @param {any} statement @returns {Piece[]} */
function piecesOf(statement) {
  if (statement.type === "FunctionDeclaration") {
    return [{ node: statement, variable: statement.id.name }];
  }
  if (statement.type === "VariableDeclaration") {
    return statement.declarations.flatMap((/** @type {any} */ node) => {
      if (node.id.name === "wasmImports") {
        return node.init.properties.map((/** @type {any} */ each) => ({
          node: each,
          asked: each.key.name ?? each.key.value,
        }));
      }
      return isPure(node.init) ? { node, variable: node.id.name } : { node };
    });
  }
  const { left, right } = statement.expression ?? {};
  const sets = left?.type === "MemberExpression" && isPure(right);
  if (!sets || left.object.type !== "Identifier") return [{ node: statement }];
  if (left.object.name !== "Module") return [{ node: statement, variable: left.object.name }];
  return [{ node: statement, member: left.computed ? left.property.value : left.property.name }];
}

const pieces = statements.flatMap(piecesOf);
const variables = new Set();
const members = new Set();
for (const caller of callers) {
  for (const name of (await readFile(caller, "utf8")).match(/[\w$]+/g) ?? []) members.add(name);
}

const kept = new Set();
for (let before = -1; before < kept.size; ) {
  before = kept.size;
  for (const { node, variable, member, asked: name } of pieces) {
    if (kept.has(node)) continue;
    if (variable && !variables.has(variable)) continue;
    if (member && !members.has(member)) continue;
    if (name && !asked.has(name)) continue;
    kept.add(node);
    full(node, (/** @type {any} */ part) => {
      if (part.type === "Identifier" && part.name !== ON_A_PAGE) variables.add(part.name);
      else if (part.type === "Literal") members.add(part.value);
      else if (part.type === "MemberExpression") members.add(part.property.name);
    });
  }
}

/** @param {any} node */
const textOf = ({ start, end }) => text.slice(start, end);
/** @param {any[]} nodes */
const keptOf = (nodes) => nodes.filter((node) => kept.has(node)).map(textOf);

/** What is left of a statement. @param {any} statement */
function left(statement) {
  if (statement.type !== "VariableDeclaration") return kept.has(statement) ? textOf(statement) : "";
  const told = statement.declarations.flatMap((/** @type {any} */ one) =>
    one.id.name === "wasmImports" ? `wasmImports={${keptOf(one.init.properties)}}` : keptOf([one]),
  );
  return told.length > 0 ? `${statement.kind} ${told};` : "";
}

const before = text.slice(0, statements[0].start);
const after = text.slice(statements[statements.length - 1].end);
await writeFile(out, [before, ...statements.map(left), after].join("\n"));
