import { type DxfGroups, groupKind } from './dxf-groups.ts';

/**
 * The 22 bytes at the start of every binary DXF file (DXF reference, "Binary DXF Files"), as character codes.
 */
const SENTINEL: readonly number[] = [
  0x41, 0x75, 0x74, 0x6f, 0x43, 0x41, 0x44, 0x20, 0x42, 0x69, 0x6e, 0x61, 0x72, 0x79, 0x20, 0x44, 0x58, 0x46,
  0x0d, 0x0a, 0x1a, 0x00,
];

/** Whether the bytes start as a binary DXF file does. */
export function isBinaryDxf(bytes: Uint8Array): boolean {
  return SENTINEL.every((byte, i) => bytes[i] === byte);
}

/**
 * Reads the pairs of a binary DXF file. Old files write a group code in one byte, newer ones in two: the
 * first pair, which is always code 0, shows which.
 *
 * @param decode turns the bytes of a text value into text
 */
export function binaryGroups(bytes: Uint8Array, decode: (text: Uint8Array) => string): DxfGroups {
  return new BinaryGroups(bytes, decode);
}

class BinaryGroups implements DxfGroups {
  code = -1;
  value: string | number = '';
  line = 0;
  brokenAt = 0;
  private readonly bytes: Uint8Array;
  private readonly view: DataView;
  private readonly decode: (text: Uint8Array) => string;
  private readonly wideCodes: boolean;
  private at = SENTINEL.length;

  constructor(bytes: Uint8Array, decode: (text: Uint8Array) => string) {
    this.bytes = bytes;
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.decode = decode;
    this.wideCodes = bytes[this.at] === 0 && bytes[this.at + 1] === 0;
  }

  next(): boolean {
    if (this.at >= this.bytes.length) {
      return false;
    }
    this.line++;
    try {
      this.code = this.readCode();
      this.value = this.readValue();
      return true;
    } catch (error) {
      if (!(error instanceof RangeError)) {
        throw error;
      }
      // the data ends within a value
      this.brokenAt = this.line;
      this.at = this.bytes.length;
      return false;
    }
  }

  private readCode(): number {
    if (this.wideCodes) {
      return this.view.getInt16(this.skip(2), true);
    }
    const code = this.view.getUint8(this.skip(1));
    return code === 255 ? this.view.getInt16(this.skip(2), true) : code;
  }

  private readValue(): string | number {
    switch (groupKind(this.code)) {
      case 'double':
        return finiteOrNaN(this.view.getFloat64(this.skip(8), true));
      case 'int16':
        return this.view.getInt16(this.skip(2), true);
      case 'int32':
        return this.view.getInt32(this.skip(4), true);
      case 'int64':
        return Number(this.view.getBigInt64(this.skip(8), true));
      case 'bool':
        return this.view.getUint8(this.skip(1));
      case 'chunk':
        this.skip(this.view.getUint8(this.skip(1)));
        return '';
      case 'text':
        return this.readText();
    }
  }

  private readText(): string {
    const end = this.bytes.indexOf(0, this.at);
    if (end < 0) {
      throw new RangeError('text value without its final zero byte');
    }
    const text = this.decode(this.bytes.subarray(this.at, end));
    this.at = end + 1;
    return text;
  }

  private skip(count: number): number {
    const from = this.at;
    this.at += count;
    return from;
  }
}

function finiteOrNaN(value: number): number {
  return Number.isFinite(value) ? value : Number.NaN;
}
