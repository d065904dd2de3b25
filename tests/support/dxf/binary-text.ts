/** How each range of group codes is written in binary, from the table of the DXF reference; written apart from the reader. */
function bytesOf(code: number, value: string): number[] {
  const between = (a: number, b: number): boolean => code >= a && code <= b;
  const packed = (size: number, put: (view: DataView) => void): number[] => {
    const bytes = new Uint8Array(size);
    put(new DataView(bytes.buffer));
    return [...bytes];
  };
  if (between(10, 59) || between(110, 149) || between(210, 239) || between(460, 469) || between(1010, 1059)) {
    return packed(8, (view) => view.setFloat64(0, Number(value), true));
  }
  if (between(290, 299)) {
    return [Number(value)];
  }
  if (between(90, 99) || between(420, 429) || between(440, 459) || code === 1071) {
    return packed(4, (view) => view.setInt32(0, Number(value), true));
  }
  if (between(60, 79) || between(170, 179) || between(270, 289) || between(370, 389) || between(1060, 1070)) {
    return packed(2, (view) => view.setInt16(0, Number(value), true));
  }
  return [...new TextEncoder().encode(value), 0];
}

/** The same DXF data in binary form, with group codes of one byte as in old versions or of two as in new ones. */
export function binaryDxf(text: string, wideCodes: boolean): Uint8Array {
  const bytes = [...new TextEncoder().encode('AutoCAD Binary DXF\r\n'), 26, 0];
  const lines = text.split('\n');
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]);
    if (wideCodes) {
      bytes.push(code & 255, code >> 8);
    } else if (code < 255) {
      bytes.push(code);
    } else {
      bytes.push(255, code & 255, code >> 8);
    }
    bytes.push(...bytesOf(code, lines[i + 1]));
  }
  return Uint8Array.from(bytes);
}
