// Sizes of the house, a row a package: `node tests/house/count.mjs [checkout]`. Tests and benchmarks are not counted.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import ts from 'typescript';

const root = process.argv[2] ?? '.';

const sourcesUnder = (folder) =>
  readdirSync(folder, { recursive: true })
    .map((file) => join(folder, file))
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'));

/** Line counts of all functions and methods of a source that have a body. */
function functionLengths(source) {
  const lengths = [];
  const visit = (node) => {
    if (ts.isFunctionLike(node) && node.body !== undefined) {
      const line = (position) => source.getLineAndCharacterOfPosition(position).line;
      lengths.push(line(node.getEnd()) - line(node.getStart(source)) + 1);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return lengths;
}

/** Names that an index file exports. */
const exportCount = (source) =>
  source.statements
    .filter((statement) => ts.isExportDeclaration(statement) && statement.exportClause !== undefined)
    .reduce((sum, statement) => sum + statement.exportClause.elements.length, 0);

const share = (values, part) => values.toSorted((a, b) => a - b)[Math.floor(part * (values.length - 1))] ?? 0;

function rowOf(folder) {
  const parsed = sourcesUnder(join(root, folder, 'src')).map((file) => ({
    file,
    source: ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest),
  }));
  const lines = parsed.map(({ source }) => source.getLineStarts().length - 1);
  const functions = parsed.flatMap(({ source }) => functionLengths(source));
  // entry points of a package: its index and the subpaths it offers
  const { exports: entries = {} } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
  const entryFiles = Object.values(entries).flatMap((entry) => entry['@pourproof/source'] ?? []);
  const exported = entryFiles.map((entry) => {
    const at = parsed.find(({ file }) => file === join(root, folder, entry));
    return at === undefined ? 0 : exportCount(at.source);
  });
  return {
    package: folder,
    files: parsed.length,
    lines: lines.reduce((sum, count) => sum + count, 0),
    'file p50': share(lines, 0.5),
    'file max': Math.max(...lines),
    functions: functions.length,
    'function p50': share(functions, 0.5),
    'function p90': share(functions, 0.9),
    exports: exported.join(' + '),
  };
}

const rows = ['packages', 'apps']
  .flatMap((group) => readdirSync(join(root, group)).map((name) => `${group}/${name}`))
  .filter((folder) => existsSync(join(root, folder, 'package.json')))
  .map(rowOf);
const columns = Object.keys(rows[0]);
console.log(`| ${columns.join(' | ')} |\n|${' --- |'.repeat(columns.length)}`);
for (const row of rows) {
  console.log(`| ${columns.map((column) => row[column]).join(' | ')} |`);
}
