// Drawings of every kind that costs the reader time or memory in its own way, each made to a size in bytes. Fixed sequences, so that runs compare.

/** Name → maker of an SVG text of about that many bytes. */
export const DRAWINGS = {
  'one long path of lines': (bytes) => page(`<path d="${lines(bytes, Number.POSITIVE_INFINITY)}"/>`),
  'one path of small outlines': (bytes) => page(`<path d="${lines(bytes, 40)}"/>`),
  'lettering-like curves': (bytes) => page(`<path d="${letters(bytes)}"/>`),
  'dense small curves': (bytes) => page(`<path d="${curves(bytes, 3)}"/>`),
  'dense large curves': (bytes) => page(`<path d="${curves(bytes, 30)}"/>`),
  'stroke of lines': (bytes) => page(`<path fill="none" stroke="#000" d="${lines(bytes, 40)}"/>`),
  'many small paths': (bytes) =>
    page(repeat(bytes / 80, (i) => `<path d="${smallPath(i)}" fill="#${i % 2 ? 'a22' : '22a'}"/>`)),
  'tiny squares': (bytes) =>
    page(repeat(bytes / 46, (i) => `<rect x="${column(i)}" y="${row(i)}" width="2" height="2"/>`)),
  'tiny circles': (bytes) =>
    page(repeat(bytes / 36, (i) => `<circle cx="${column(i)}" cy="${row(i)}" r="1"/>`)),
  'squares of two colours by class': (bytes) =>
    page(
      `<style>.a{fill:red}.b{fill:blue}</style>${repeat(bytes / 55, (i) => `<rect class="${i % 2 ? 'a' : 'b'}" x="${column(i)}" y="${row(i)}" width="2" height="2"/>`)}`,
    ),
  'crossing grid': (bytes) => page(`<path d="${grid(bytes)}"/>`),
  'lines through one node': (bytes) => page(`<path d="${star(bytes)}"/>`),
  'nested groups with use': (bytes) => page(nested(bytes)),
};

function page(body) {
  return new TextEncoder().encode(
    `<svg xmlns="http://www.w3.org/2000/svg" width="1000mm" height="1000mm" viewBox="0 0 1000 1000">${body}</svg>`,
  );
}

function repeat(count, make) {
  const parts = [];
  for (let i = 0; i < count; i++) {
    parts.push(make(i));
  }
  return parts.join('');
}

const column = (i) => (i % 300) * 3;
const row = (i) => Math.floor(i / 300) * 3;

/** A fixed sequence of numbers 0…1. */
function numbers(seed) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return state / 0x7fffffff;
  };
}

function curves(bytes, size) {
  const next = numbers(1);
  const off = () => (size * (next() - 0.5)).toFixed(2);
  return repeat(bytes / (size < 10 ? 33 : 36), (i) =>
    i % 40 === 0
      ? `M${(1000 * next()).toFixed(1)} ${(1000 * next()).toFixed(1)}`
      : `c${off()} ${off()} ${off()} ${off()} ${off()} ${off()}${i % 40 === 39 ? 'z' : ''}`,
  );
}

/** Round outlines of 8 smooth pieces, 2 to 10 mm wide, side by side: what outlined letters are like. */
function letters(bytes) {
  const next = numbers(3);
  const perRow = 80;
  return repeat(bytes / 274, (i) => {
    const r = 1 + 4 * next();
    const parts = [];
    for (let k = 0; k < 8; k++) {
      const [a, b] = [(k * Math.PI) / 4, ((k + 1) * Math.PI) / 4];
      const h = (4 / 3) * Math.tan((b - a) / 4);
      const at = (x) => (r * x).toFixed(3);
      const [ca, sa, cb, sb] = [Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)];
      parts.push(
        `c${at(-h * sa)} ${at(h * ca)} ${at(cb + h * sb - ca)} ${at(sb - h * cb - sa)} ${at(cb - ca)} ${at(sb - sa)}`,
      );
    }
    return `M${((i % perRow) * 12 + 8).toFixed(1)} ${(Math.floor(i / perRow) * 12 + 6).toFixed(1)}${parts.join('')}z`;
  });
}

function lines(bytes, perOutline) {
  const next = numbers(7);
  const off = () => (6 * (next() - 0.5)).toFixed(2);
  return repeat(bytes / 11, (i) =>
    i === 0 || i % perOutline === 0
      ? `M${(1000 * next()).toFixed(1)} ${(1000 * next()).toFixed(1)}`
      : `l${off()} ${off()}${i % perOutline === perOutline - 1 ? 'z' : ''}`,
  );
}

const smallPath = (i) => `M${column(i)} ${row(i)}h2c0 1-.5 2-1 2s-1-1-1-2zm.5.5v.5h.5z`;

/** Bars across and along that cross everywhere: n bars give n²/4 crossings of outlines. */
function grid(bytes) {
  const bars = Math.max(4, Math.round(Math.sqrt(bytes) * 0.6));
  const step = 1000 / bars;
  const cross = repeat(bars, (i) => {
    const at = (i * step).toFixed(3);
    const wide = (step / 3).toFixed(3);
    return `M0 ${at}h1000v${wide}H0zM${at} 0v1000h${wide}V0z`;
  });
  // filled up with outlines apart, so that the file has its size and the crossings stay in proportion to it
  return cross + lines(Math.max(0, bytes - cross.length), 40);
}

function star(bytes) {
  const count = Math.max(8, Math.round(bytes / 32));
  return repeat(count, (i) => {
    const a = (2 * Math.PI * i) / count;
    const b = a + Math.PI / count;
    return `M500 500L${(500 + 400 * Math.cos(a)).toFixed(3)} ${(500 + 400 * Math.sin(a)).toFixed(3)} ${(500 + 400 * Math.cos(b)).toFixed(3)} ${(500 + 400 * Math.sin(b)).toFixed(3)}z`;
  });
}

/** Groups 50 deep, each branch with a part that is used again beside it. */
function nested(bytes) {
  const uses = 20;
  return repeat(bytes / 2150, (i) => {
    const open = repeat(50, (k) => `<g transform="translate(${(k % 7) / 10} 0)">`);
    const part = `<g id="p${i}"><path d="M${column(i)} ${row(i) % 900}h2v2h-2z"/></g>`;
    return open + part + repeat(uses, (k) => `<use href="#p${i}" y="${(k + 1) / 10}"/>`) + '</g>'.repeat(50);
  });
}
