import {
  compose,
  IDENTITY,
  type Region,
  ringCoords,
  rotation,
  scaling,
  type Transform,
  translation,
} from '@pourproof/plane';
import { ArtworkError } from '../artwork-error.ts';
import { findFont } from '../lettering/find-font.ts';
import type { LetteringFont } from '../lettering/lettering-font.ts';
import type { OutlinedText, OutlineTextOptions, RunLetter } from '../lettering/outlined-text.ts';
import { largestScale } from '../path/largest-scale.ts';
import { type Path, PathBuilder } from '../path/path.ts';
import { shapeGeometry } from './basic-shape.ts';
import { userUnits } from './css-length.ts';
import { drawShape } from './draw-shape.ts';
import { findReferenced, hrefOf } from './references.ts';
import { type DrawState, lengthsAt, type Scene, styleUnder } from './scene.ts';
import { ownText, placeOf, type SvgElement } from './svg-element.ts';
import { fitRuns, type RunFit } from './text-length.ts';
import { measureTextPath, type TextPath } from './text-path.ts';
import { type TextRun, textRuns } from './text-runs.ts';

/**
 * Draws a `text` element's letters as outlines where a font was given; otherwise says which text is missing.
 */
export function drawText(scene: Scene, element: SvgElement, state: DrawState): void {
  const runs = textRuns(scene, element, state);
  const words = allText(element).replace(/\s+/g, ' ').trim();
  if (words === '' || runs.length === 0) {
    return;
  }
  const said = `"${words.length > 40 ? `${words.slice(0, 40)}…` : words}"`;
  if (scene.options.fonts.length === 0) {
    if (scene.mode === 'paint' && state.style.get('visibility') === 'visible') {
      scene.notices.add('text-not-outlined', placeOf(element), said);
    }
    return;
  }
  noticeSimplified(scene, element, state);
  let pen = { x: 0, y: 0 };
  for (const chunk of chunksOf(runs)) {
    pen = drawChunk(scene, chunk, runs, state, pen);
  }
}

/** Runs up to the next one that has a place of its own or stands on another path. */
function chunksOf(runs: readonly TextRun[]): TextRun[][] {
  const chunks: TextRun[][] = [];
  runs.forEach((run, i) => {
    const starts = run.x !== undefined || run.y !== undefined || run.along !== runs[i - 1]?.along;
    const current = chunks[chunks.length - 1];
    if (current === undefined || starts) {
      chunks.push([run]);
    } else {
      current.push(run);
    }
  });
  return chunks;
}

/** Sets one chunk by its anchor and returns where the pen is after it. */
function drawChunk(
  scene: Scene,
  chunk: readonly TextRun[],
  all: readonly TextRun[],
  state: DrawState,
  pen: { x: number; y: number },
): { x: number; y: number } {
  const first = chunk[0] as TextRun;
  const path = first.along === undefined ? undefined : textPathOf(scene, first.along, state);
  if (first.along !== undefined && path === undefined) {
    return pen;
  }
  const sizes = chunk.map((run) => setRun(scene, run, state, {}));
  const { fits, unfitted } = fitRuns(chunk, all, sizes, lengthsAt(scene, state));
  for (const element of scene.mode === 'paint' ? unfitted : []) {
    scene.notices.add('text-simplified', placeOf(element), 'textLength is not followed');
  }
  const advances = sizes.map(({ advance, letters }, i) => {
    const { gap, factor } = fits[i] as RunFit;
    return factor * advance + gap * letters;
  });
  const total = chunk.reduce(
    (sum, run, i) => sum + run.dx + (advances[i] as number) - (fits[i] as RunFit).surplus,
    0,
  );
  const anchor = first.style.get('text-anchor').toLowerCase();
  const rightToLeft = first.style.get('direction') === 'rtl';
  const before = anchor === 'middle' ? total / 2 : (anchor === 'end') !== rightToLeft ? total : 0;
  let x = (first.x ?? (path === undefined ? pen.x : 0)) - before;
  let y = first.y ?? (path === undefined ? pen.y : 0);
  for (const [i, run] of chunk.entries()) {
    x += run.dx;
    y += run.dy;
    // runs are set about their middle, which is the same place in both directions of reading
    const middle = x + (advances[i] as number) / 2;
    const { gap, factor, surplus } = fits[i] as RunFit;
    const turned = (letter: RunLetter): Transform => turnOf(run, letter);
    const set = setRun(
      scene,
      run,
      state,
      path === undefined
        ? { toMm: compose(translation(middle, y), scaling(factor, 1)), stretch: gap, moveLetter: turned }
        : {
            stretch: gap,
            moveLetter: (letter) => {
              const placed = path.measured.place(letter, path.offset + middle);
              return placed === null ? null : compose(placed, turned(letter));
            },
          },
    );
    for (const glyph of set.glyphs) {
      drawShape(scene, run.element, { ...state, style: run.style }, outlinePath(glyph.region), undefined);
    }
    if (set.looseMarks) {
      scene.notices.add('text-simplified', placeOf(run.element), 'marks that the font gives no place');
    }
    x += (advances[i] as number) - surplus;
  }
  return { x, y };
}

/** A letter's own turn, about where it starts on the baseline. */
function turnOf({ turns }: TextRun, { index, x }: RunLetter): Transform {
  const degrees = turns[index] ?? 0;
  return degrees === 0
    ? IDENTITY
    : compose(translation(x, 0), compose(rotation((degrees * Math.PI) / 180), translation(-x, 0)));
}

/** A run's outlines in user units. */
function setRun(
  scene: Scene,
  run: TextRun,
  state: DrawState,
  place: Pick<Partial<OutlineTextOptions>, 'toMm' | 'moveLetter' | 'stretch'>,
): OutlinedText {
  const { style } = run;
  const lengths = { ...lengthsAt(scene, state), fontSize: style.fontSize };
  const spacing = (name: string): number => userUnits(style.get(name), 'x', lengths);
  const font = fontFor(scene, run);
  try {
    return font.outlineText(run.text, {
      emSize: style.fontSize,
      toMm: IDENTITY,
      unitMm: largestScale(state.toMm),
      anchor: 'middle',
      direction: style.get('direction') === 'rtl' ? 'rtl' : 'ltr',
      letterSpacing: spacing('letter-spacing'),
      wordSpacing: spacing('word-spacing'),
      toleranceMm: scene.options.toleranceMm / (largestScale(state.toMm) || 1),
      ...place,
    });
  } catch (error) {
    if (error instanceof ArtworkError) {
      const { line, column } = run.element;
      throw new ArtworkError(error.code, error.parameters, (unit) => error.wordsIn(unit), { line, column });
    }
    throw error;
  }
}

function fontFor(scene: Scene, run: TextRun): LetteringFont {
  const { style } = run;
  const families = style
    .get('font-family')
    .split(',')
    .map((name) => name.trim());
  const weightText = style.get('font-weight').toLowerCase();
  const weight = weightText === 'bold' ? 700 : Number(weightText) || 400;
  const found = findFont(scene.options.fonts, {
    families,
    weight,
    italic: style.get('font-style') !== 'normal',
  });
  if (found === undefined) {
    throw new RangeError('fonts must hold a font here');
  }
  if (!found.familyFound && scene.mode === 'paint') {
    scene.notices.add('text-in-given-font', placeOf(run.element), found.font.name);
  }
  return found.font;
}

/** Rings in user units as a path of lines. */
function outlinePath(region: Region): Path {
  const out = new PathBuilder();
  for (let k = 0; k < region.ringEnds.length; k++) {
    const ring = ringCoords(region, k);
    out.moveTo(ring[0] as number, ring[1] as number);
    for (let i = 2; i < ring.length; i += 2) {
      out.lineTo(ring[i] as number, ring[i + 1] as number);
    }
    out.close();
  }
  return out.path();
}

function textPathOf(
  scene: Scene,
  textPath: SvgElement,
  state: DrawState,
): { readonly measured: TextPath; readonly offset: number } | undefined {
  const href = hrefOf(textPath);
  const target = href === undefined ? undefined : findReferenced(scene, href, textPath);
  if (target === undefined) {
    return undefined;
  }
  const style = styleUnder(scene, target);
  const lengths = lengthsAt(scene, state);
  const measured = measureTextPath(shapeGeometry(target, style, lengths).path);
  const along = { ...lengths, viewportWidth: measured.total };
  return { measured, offset: userUnits(textPath.attributes.get('startOffset'), 'x', along) };
}

/** What of the text's setting is not followed. */
function noticeSimplified(scene: Scene, element: SvgElement, state: DrawState): void {
  if (scene.mode !== 'paint') {
    return;
  }
  for (const [name, usual] of [
    ['writing-mode', /^(?:horizontal-tb|lr|lr-tb)$/],
    ['dominant-baseline', /^(?:auto|alphabetic)$/],
  ] as const) {
    if (!usual.test(state.style.get(name))) {
      scene.notices.add('text-simplified', placeOf(element), `${name} is not followed`);
    }
  }
}

function allText(element: SvgElement): string {
  return ownText(element) + element.children.map(allText).join(' ');
}
