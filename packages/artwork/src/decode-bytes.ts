/**
 * The decoder that Node and browsers both have (Encoding Standard, TextDecoder); the types of neither are
 * part of this package.
 */
interface BytesDecoder {
  decode(bytes: Uint8Array): string;
}

const { TextDecoder } = globalThis as unknown as {
  TextDecoder: new (label: string, options?: { fatal: boolean }) => BytesDecoder;
};

/**
 * Text of bytes in an encoding, without its byte order mark.
 *
 * @param label name of the encoding by the Encoding Standard: `utf-8`, `utf-16le`, `windows-1252`, …
 * @param fatal whether bytes that do not fit the encoding throw instead of becoming U+FFFD
 * @throws {TypeError} when `fatal` and the bytes do not fit
 * @throws {RangeError} for a label that the platform does not know
 */
export function decodeBytes(bytes: Uint8Array, label: string, fatal = false): string {
  return new TextDecoder(label, { fatal }).decode(bytes);
}
