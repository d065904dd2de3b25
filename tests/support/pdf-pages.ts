import { inflateSync } from 'node:zlib';
import { MM_PER_INCH, PT_PER_INCH } from '@pourproof/plane';

const MM_PER_POINT = MM_PER_INCH / PT_PER_INCH;

/** A page of a PDF, in mm. */
export interface PdfPage {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Lengths of the level straight lines on it. */
  readonly levelLinesMm: readonly number[];
  /** Left end of each of them, from the lower left corner of the page. */
  readonly leftEndsMm: readonly Place[];
  /** Ends of all straight lines. */
  readonly pointsMm: readonly Place[];
}

type Place = readonly [x: number, y: number];

/** Pages of a PDF with the level lines that they draw, from its own operators (ISO 32000-1 §8.5: `cm`, `m`, `l`). */
export function pagesOf(pdf: Buffer): readonly PdfPage[] {
  const text = pdf.toString('latin1');
  const streams = new Map<string, string>();
  for (const { index, 0: object, 1: id } of text.matchAll(
    /(\d+) 0 obj\s(?:(?!endobj)[\s\S])*?stream\r?\n/gu,
  )) {
    const start = index + object.length;
    try {
      const packed = pdf.subarray(start, text.indexOf('endstream', start));
      streams.set(id!, inflateSync(packed).toString('latin1'));
    } catch {
      // fonts and pictures are packed in other ways
    }
  }
  return [...text.matchAll(/\/Type \/Page\b[\s\S]*?endobj/gu)].map(([page]) => {
    const [, w, h] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/u.exec(page)!;
    const [, contents] = /\/Contents (\d+) 0 R/u.exec(page)!;
    return {
      widthMm: Number(w) * MM_PER_POINT,
      heightMm: Number(h) * MM_PER_POINT,
      ...linesOn(streams.get(contents!) ?? ''),
    };
  });
}

type Matrix = readonly [number, number, number, number, number, number];

function linesOn(content: string): Pick<PdfPage, 'levelLinesMm' | 'leftEndsMm' | 'pointsMm'> {
  const levelLinesMm: number[] = [];
  const leftEndsMm: Place[] = [];
  const pointsMm: Place[] = [];
  const kept: Matrix[] = [];
  let map: Matrix = [1, 0, 0, 1, 0, 0];
  let numbers: number[] = [];
  let at: Place = [0, 0];
  const place = (x: number, y: number): Place => [
    map[0] * x + map[2] * y + map[4],
    map[1] * x + map[3] * y + map[5],
  ];
  for (const token of content.split(/\s+/u)) {
    if (/^[+-]?[\d.]+$/u.test(token)) {
      numbers.push(Number(token));
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    if (token === 'q') {
      kept.push(map);
    } else if (token === 'Q') {
      map = kept.pop() ?? map;
    } else if (token === 'cm') {
      const [m0, m1, m2, m3, m4, m5] = map;
      map = [
        m0 * a + m2 * b,
        m1 * a + m3 * b,
        m0 * c + m2 * d,
        m1 * c + m3 * d,
        m0 * e + m2 * f + m4,
        m1 * e + m3 * f + m5,
      ];
    } else if (token === 'm' || token === 'l') {
      const to = place(a, b);
      pointsMm.push([to[0] * MM_PER_POINT, to[1] * MM_PER_POINT]);
      if (token === 'l' && Math.abs(to[1] - at[1]) < 1e-3) {
        levelLinesMm.push(Math.abs(to[0] - at[0]) * MM_PER_POINT);
        leftEndsMm.push([Math.min(at[0], to[0]) * MM_PER_POINT, at[1] * MM_PER_POINT]);
      }
      at = to;
    }
    numbers = [];
  }
  return { levelLinesMm, leftEndsMm, pointsMm };
}
