/** Reads big-endian numbers one after the other; reading past the end throws a `RangeError`. */
export class ByteReader {
  readonly #data: DataView;
  #at: number;

  constructor(bytes: Uint8Array, at = 0) {
    this.#data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.#at = at;
  }

  /** Where the next byte is read. */
  get at(): number {
    return this.#at;
  }

  u8(): number {
    const value = this.#data.getUint8(this.#at);
    this.#at += 1;
    return value;
  }

  u16(): number {
    const value = this.#data.getUint16(this.#at);
    this.#at += 2;
    return value;
  }

  i16(): number {
    const value = this.#data.getInt16(this.#at);
    this.#at += 2;
    return value;
  }

  u32(): number {
    const value = this.#data.getUint32(this.#at);
    this.#at += 4;
    return value;
  }

  /** The next `length` bytes, not copied. */
  bytes(length: number): Uint8Array {
    if (length < 0 || this.#at + length > this.#data.byteLength) {
      throw new RangeError('the bytes end before');
    }
    const part = new Uint8Array(this.#data.buffer, this.#data.byteOffset + this.#at, length);
    this.#at += length;
    return part;
  }

  /** A number of 1 to 3 bytes (WOFF2, "255UInt16"). */
  short(): number {
    const code = this.u8();
    switch (code) {
      case 253:
        return this.u16();
      case 254:
        return this.u8() + 506;
      case 255:
        return this.u8() + 253;
      default:
        return code;
    }
  }

  /** A number of 1 to 5 bytes, seven bits in each (WOFF2, "UIntBase128"). */
  base128(): number {
    let value = 0;
    for (let k = 0; k < 5; k++) {
      const byte = this.u8();
      value = value * 128 + (byte & 0x7f);
      if ((byte & 0x80) === 0) {
        return value;
      }
    }
    throw new RangeError('a number goes on for more than five bytes');
  }
}
