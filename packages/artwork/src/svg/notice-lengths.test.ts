import { describe, expect, test } from 'vitest';
import { readSvg } from './read-svg.ts';

const PROPERTIES: Readonly<Record<string, readonly string[]>> = {
  rect: ['x', 'y', 'width', 'height', 'rx', 'ry'],
  circle: ['cx', 'cy', 'r'],
  ellipse: ['cx', 'cy', 'rx', 'ry'],
  use: ['x', 'y', 'width', 'height'],
  svg: ['x', 'y', 'width', 'height'],
  path: ['stroke-width', 'stroke-dasharray', 'stroke-dashoffset', 'stroke-miterlimit', 'opacity'],
  g: ['stroke-width', 'fill-opacity', 'stroke-opacity', 'font-size', 'transform-origin'],
  text: ['font-size', 'letter-spacing', 'word-spacing'],
};
const ATTRIBUTES: Readonly<Record<string, readonly string[]>> = {
  line: ['x1', 'y1', 'x2', 'y2'],
  text: ['x', 'y', 'dx', 'dy', 'rotate', 'textLength'],
  tspan: ['x', 'y', 'dx', 'dy', 'rotate', 'textLength'],
  textPath: ['startOffset', 'textLength'],
  marker: ['markerWidth', 'markerHeight', 'refX', 'refY', 'viewBox', 'orient'],
  mask: ['x', 'y', 'width', 'height'],
  symbol: ['viewBox', 'width'],
  svg: ['viewBox'],
  path: ['pathLength'],
};
const LISTS = ['stroke-dasharray', 'transform-origin', 'dx', 'dy', 'x', 'y', 'rotate', 'viewBox'];
const UNREADABLE = ['12,5', '10 mm', '1e309', 'NaN', '5furlong', 'calc(1px + 2)', '--3', '1.2.3'];

/** A file in which the element is drawn, with attributes of its own. */
const fileWith = (element: string, attributes: string): string => {
  const own = `<${element} id="it" ${attributes}`;
  const around: Readonly<Record<string, string>> = {
    use: `<rect id="r" width="9" height="9"/>${own} href="#r"/>`,
    text: `${own}>words</text>`,
    tspan: `<text>${own}>words</tspan></text>`,
    textPath: `<path id="p" d="M0 0h90"/><text>${own} href="#p">words</textPath></text>`,
    marker: `${own}><path d="M0 0h1v1z"/></marker><path d="M0 0h9" stroke="#000" marker-end="url(#it)"/>`,
    mask: `${own}><rect width="9" height="9" fill="#fff"/></mask><rect width="9" height="9" mask="url(#it)"/>`,
    symbol: `${own}><rect width="9" height="9"/></symbol><use href="#it"/>`,
    g: `${own}><path d="M0 0h9v9z"/></g>`,
    path: `${own} d="M0 0h9v9z" stroke="#000"/>`,
    svg: `${own}><rect width="9" height="9"/></svg>`,
  };
  return `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm" viewBox="0 0 90 90">${around[element] ?? `${own}/>`}</svg>`;
};
const toldIn = (source: string): readonly unknown[] => {
  const notice = readSvg(source).notices.find(({ code }) => code === 'length-unreadable');
  expect(notice?.where.every(({ line, element }) => line === 1 && element !== undefined) ?? true).toBe(true);
  return (notice?.params?.details as readonly string[] | undefined) ?? [];
};
const rows = (table: typeof PROPERTIES): (readonly [string, string])[] =>
  Object.entries(table).flatMap(([element, names]) => names.map((name) => [element, name] as const));

describe('a length or number that cannot be used is told once, with element, name and value', () => {
  test.each(rows(PROPERTIES))('%s %s as attribute, in style, and by a rule', (element, name) => {
    for (const value of UNREADABLE) {
      // a comma parts the items of a list
      if (LISTS.includes(name) && (value === '12,5' || (value === '10 mm' && name === 'transform-origin'))) {
        continue;
      }
      const detail = [`${element}#it ${name}="${value}"`];
      expect(toldIn(fileWith(element, `${name}="${value}"`)), value).toEqual(detail);
      expect(toldIn(fileWith(element, `style="${name}:${value}"`)), value).toEqual(detail);
      const ruled = fileWith(element, '').replace('90">', `90"><style>#it{${name}:${value}}</style>`);
      expect(toldIn(ruled), value).toEqual(detail);
    }
  });

  test.each(rows(ATTRIBUTES))('%s %s', (element, name) => {
    for (const value of UNREADABLE) {
      if (!LISTS.includes(name) || element === 'mask' || value !== '12,5') {
        expect(toldIn(fileWith(element, `${name}="${value}"`)), value).toEqual([
          `${element}#it ${name}="${value}"`,
        ]);
      }
    }
  });

  test.each([...rows(PROPERTIES), ...rows(ATTRIBUTES)])('%s %s that is good is not told', (element, name) => {
    const isBox = name === 'viewBox';
    for (const value of isBox ? ['0 0 9 9', '0,0,9.5,9'] : ['1', '5', '1.5']) {
      expect(toldIn(fileWith(element, `${name}="${value}"`)), value).toEqual([]);
    }
  });

  test('sizes below 0 are told too, and what a scaled or reused drawing draws twice is told once', () => {
    expect(toldIn(fileWith('rect', 'width="-5"'))).toEqual(['rect#it width="-5"']);
    const reused = `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm"><rect id="r" width="1,5" height="9"/><use href="#r" x="20"/><rect x="50" width="9" height="9"/></svg>`;
    const notice = readSvg(reused, { widthMm: 40 }).notices.find(({ code }) => code === 'length-unreadable');
    expect(notice?.params).toMatchObject({ count: 1, details: ['rect#r width="1,5"'] });
  });
});
