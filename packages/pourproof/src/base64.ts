/** The alphabet of RFC 4648, section 4. */
const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes as text (RFC 4648), in Node and in a page alike. */
export function toBase64(bytes: Uint8Array): string {
  const out: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const left = bytes.length - i;
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    out.push(
      DIGITS.charAt(three >> 18),
      DIGITS.charAt((three >> 12) & 63),
      left > 1 ? DIGITS.charAt((three >> 6) & 63) : '=',
      left > 2 ? DIGITS.charAt(three & 63) : '=',
    );
  }
  return out.join('');
}

/**
 * The bytes that {@link toBase64} made text of.
 *
 * @throws {RangeError} for text that is no base64
 */
export function fromBase64(text: string): Uint8Array {
  const digits = text.replace(/={1,2}$/u, '');
  if (text.length % 4 !== 0 || digits.length % 4 === 1 || !/^[A-Za-z0-9+/]*$/u.test(digits)) {
    throw new RangeError('text is no base64');
  }
  const bytes = new Uint8Array(Math.floor((digits.length * 3) / 4));
  for (let k = 0, at = 0; at < bytes.length; k += 4) {
    const four = [0, 1, 2, 3].reduce(
      (sum, i) => (sum << 6) | Math.max(0, DIGITS.indexOf(digits.charAt(k + i) || 'A')),
      0,
    );
    for (const shift of [16, 8, 0]) {
      if (at < bytes.length) {
        bytes[at++] = (four >> shift) & 255;
      }
    }
  }
  return bytes;
}
