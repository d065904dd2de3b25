import fc from 'fast-check';

/** Numbers as files and makers write them, most of them good. */
export const goodNumber: fc.Arbitrary<string> = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: -20, max: 100 }).map(String) },
  { weight: 3, arbitrary: fc.integer({ min: -9999, max: 99999 }).map((n) => String(n / 1000)) },
  { weight: 1, arbitrary: fc.constantFrom('0', '.5', '-0', '+5', '1e2', '1e-3', '2.') },
);

/** Numbers that overflow, vanish, or are none. */
export const hostileNumber: fc.Arbitrary<string> = fc.constantFrom(
  '1e309',
  '-1e309',
  '1e308',
  '-1e300',
  '1e-320',
  '1e-30',
  '1e15',
  '-1e9',
  'NaN',
  'Infinity',
  '12,5',
  '10 mm',
  '',
  ' ',
  '1e',
  '--1',
  '0x10',
  '9'.repeat(400),
  '1.7976931348623157e308',
  '١٢',
  '1/0',
  'null',
  'calc(1px',
  '-',
  '.',
);

/** A number, now and then a hostile one. */
export const someNumber: fc.Arbitrary<string> = fc.oneof(
  { weight: 15, arbitrary: goodNumber },
  { weight: 1, arbitrary: hostileNumber },
);

/** A text with up to three letters put in, taken out or doubled anywhere: what damage does. */
export function damaged(text: fc.Arbitrary<string>): fc.Arbitrary<string> {
  const damage = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.integer({ min: 0, max: 40 }),
    way: fc.constantFrom('out', 'twice', 'in'),
    put: fc.oneof(
      fc.constantFrom(
        '<',
        '"',
        '>',
        '&',
        '(',
        ')',
        ';',
        '}',
        '{',
        '\n',
        '\0',
        '/*',
        ']]>',
        ',',
        '-',
        '1e999',
        '\ud800',
        '%',
      ),
      hostileNumber,
    ),
  });
  return fc.tuple(text, fc.array(damage, { maxLength: 3 })).map(([whole, damages]) =>
    damages.reduce((out, { at, length, way, put }) => {
      const from = Math.floor(at * out.length);
      const part = out.slice(from, from + length);
      const middle = way === 'out' ? '' : way === 'twice' ? part + part : put + part;
      return out.slice(0, from) + middle + out.slice(from + length);
    }, whole),
  );
}
