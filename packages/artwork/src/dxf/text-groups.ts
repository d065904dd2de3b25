import { type DxfGroups, groupKind } from './dxf-groups.ts';

/**
 * Reads the pairs of a DXF file in text form.
 *
 * Lines may end in LF, CR LF, CR or CR CR LF. Empty lines where a code should be are skipped. Reading stops,
 * with `brokenAt` set, at a code line that holds no whole number.
 */
export function textGroups(source: string): DxfGroups {
  return new TextGroups(source);
}

class TextGroups implements DxfGroups {
  code = -1;
  value: string | number = '';
  line = 0;
  brokenAt = 0;
  private readonly text: string;
  private at = 0;

  constructor(source: string) {
    // a lone CR ends a line as well; most files have none, and then nothing is copied
    this.text = /\r(?!\n)/.test(source) ? source.replace(/\r+\n?/g, '\n') : source;
  }

  next(): boolean {
    let codeLine = this.readLine();
    while (codeLine === '') {
      codeLine = this.readLine();
    }
    if (codeLine === undefined) {
      return false;
    }
    if (!/^[+-]?\d{1,6}$/.test(codeLine)) {
      // a control character as the last line is how old systems mark the end of a file
      this.brokenAt = codeLine === '\u001a' ? 0 : this.line;
      return false;
    }
    const raw = this.readLine();
    if (raw === undefined) {
      this.brokenAt = this.line;
      return false;
    }
    this.code = Number(codeLine);
    const kind = groupKind(this.code);
    this.value = kind === 'text' || kind === 'chunk' ? raw : numberFrom(raw);
    return true;
  }

  private readLine(): string | undefined {
    const { text, at } = this;
    if (at >= text.length) {
      return undefined;
    }
    const end = text.indexOf('\n', at);
    this.at = end < 0 ? text.length : end + 1;
    this.line++;
    return text.slice(at, end < 0 ? undefined : end).trim();
  }
}

/** NaN for what is no number, or none that a double can hold. */
function numberFrom(raw: string): number {
  const value = raw === '' ? Number.NaN : Number(raw);
  return Number.isFinite(value) ? value : Number.NaN;
}
