import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { expect, test } from 'vitest';

/** A user's file that names every entry of the package and some of the types behind them. */
const SOURCE = `
import type { Drawing } from '@pourproof/plane';
import { readArtwork, refuseEmpty } from '@pourproof/artwork';
import { ArtworkError, readSvg, type SvgOptions } from '@pourproof/artwork/svg';
import { type ReadDxfOptions, readDxf } from '@pourproof/artwork/dxf';
import { type LetteringFont, openFont, readLettering } from '@pourproof/artwork/lettering';
export async function use(bytes: Uint8Array, svg: SvgOptions, dxf: ReadDxfOptions): Promise<Drawing[]> {
  const font: LetteringFont = await openFont(bytes, { axes: { wght: 650 } });
  try {
    refuseEmpty(readArtwork(bytes, 'a.svg'), 'a.svg');
  } catch (error) {
    if (!(error instanceof ArtworkError)) throw error;
  }
  return [readSvg(bytes, { ...svg, fonts: [font] }), readDxf(bytes, dxf), await readLettering('A', { font, capHeightMm: 9 })];
}
`;

test.each([
  ['Node', ts.ModuleKind.NodeNext, ts.ModuleResolutionKind.NodeNext],
  ['a bundler', ts.ModuleKind.ESNext, ts.ModuleResolutionKind.Bundler],
])(
  'types compile for %s with skipLibCheck off and no other types installed',
  (_, module, moduleResolution) => {
    const options: ts.CompilerOptions = {
      strict: true,
      exactOptionalPropertyTypes: true,
      skipLibCheck: false,
      target: ts.ScriptTarget.ES2023,
      lib: ['lib.es2023.d.ts'],
      types: [],
      noEmit: true,
      module,
      moduleResolution,
    };
    const name = fileURLToPath(new URL('consumer.mts', import.meta.url));
    const host = ts.createCompilerHost(options);
    const { fileExists, getSourceFile } = host;
    host.fileExists = (file) => file === name || fileExists(file);
    host.getSourceFile = (file, ...rest) =>
      file === name
        ? ts.createSourceFile(file, SOURCE, ts.ScriptTarget.ES2023)
        : getSourceFile(file, ...rest);
    const program = ts.createProgram([name], options, host);
    const problems = ts.getPreEmitDiagnostics(program);
    expect(problems.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'))).toEqual([]);
  },
);
