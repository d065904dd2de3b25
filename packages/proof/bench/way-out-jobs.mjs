import { readFile } from 'node:fs/promises';

const fixture = (path) => readFile(new URL(`../../../fixtures/${path}`, import.meta.url));

async function lettered(text, job) {
  return {
    source: { kind: 'lettering', text, font: await fixture('fonts/lora-400.ttf') },
    job: { wood: 'maple', capHeight: '15mm', ...job },
  };
}

/** Jobs with findings, for the time that trying their ways out takes; the sources as the front door takes them. */
export const WAY_OUT_JOBS = {
  'a name': () => lettered('Ilo', { bit: ['flat:1mm'], depth: '2mm', seal: 'epoxy' }),
  'a line of 30 letters': () =>
    lettered('Sphinx of black quartz judge my vow', { bit: ['flat:1.6mm'], depth: '3mm' }),
  'the demo order': async () => {
    const { artwork, schema: _, ...job } = JSON.parse(await fixture('demo/job.json'));
    return { source: { kind: 'file', name: artwork, bytes: await fixture(`demo/${artwork}`) }, job };
  },
};
/** What vetting them may take, s. */
export const WAY_OUT_AIMS = { 'a line of 30 letters': 2, 'the demo order': 3 };
