// Which mutants the types refuse: `tsc -b` comes before the tests in `npm test`.
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import ts from 'typescript';

/** Those of the mutants, all of one package, with which their file no longer compiles. */
export function refusedByTypes(name, mutants) {
  const config = join('packages', name, 'tsconfig.json');
  const { options, fileNames } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(config, ts.sys.readFile).config,
    ts.sys,
    resolve(dirname(config)),
  );
  let changed = { file: '', text: '', version: 0 };
  const service = ts.createLanguageService({
    getCompilationSettings: () => ({ ...options, composite: false, incremental: false, noEmit: true }),
    getScriptFileNames: () => fileNames,
    getScriptVersion: (file) => (file === changed.file ? `mutant ${changed.version}` : 'as it is'),
    getScriptSnapshot: (file) => {
      const text = file === changed.file ? changed.text : ts.sys.readFile(file);
      return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
    },
    getCurrentDirectory: () => process.cwd(),
    getDefaultLibFileName: ts.getDefaultLibFilePath,
    fileExists: ts.sys.fileExists,
    readFile: ts.sys.readFile,
    readDirectory: ts.sys.readDirectory,
  });
  return mutants.filter(({ fileName, location, replacement }, index) => {
    const file = resolve(fileName);
    changed = { file, text: withMutant(readFileSync(file, 'utf8'), location, replacement), version: index };
    return service.getSyntacticDiagnostics(file).length + service.getSemanticDiagnostics(file).length > 0;
  });
}

function withMutant(text, { start, end }, replacement) {
  const lines = text.split('\n');
  const offset = ({ line, column }) =>
    lines.slice(0, line).reduce((sum, each) => sum + each.length + 1, column);
  return text.slice(0, offset(start)) + replacement + text.slice(offset(end));
}
