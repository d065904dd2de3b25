import { readLettering } from '@pourproof/artwork';
import { signedArea } from '@pourproof/plane';

/** Fonts of three packings beside this page and a text for each. */
const TEXTS: Readonly<Record<string, string>> = {
  'arvo-400.ttf': 'AVATo',
  'josefin-sans-latin-100.woff': 'Iggy',
  'amiri-arabic-400.woff2': 'سلام',
};

async function areas(): Promise<string> {
  const rows: string[] = [];
  for (const [file, text] of Object.entries(TEXTS)) {
    const font = new Uint8Array(await (await fetch(`/${file}`)).arrayBuffer());
    const { shapes } = await readLettering(text, { font, widthMm: 50 });
    rows.push(...shapes.map((shape) => signedArea(shape.region).toFixed(6)));
  }
  return rows.join(' ');
}

areas().then(
  (text) => postMessage(text),
  (error: unknown) => postMessage(String(error)),
);
