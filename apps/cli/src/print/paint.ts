import type { Severity } from '@pourproof/proof';

/** Bold with red, yellow, cyan or green of the terminal's own palette (ECMA-48 SGR). */
export function painted(text: string, severity: Severity | 'clear'): string {
  const codes = { stop: 31, caution: 33, note: 36, clear: 32 };
  return `\u001b[1;${codes[severity]}m${text}\u001b[0m`;
}
