import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { breaches } from '../support/viewer/breaches.ts';
import { keepPicture, viewerForTests } from '../support/viewer/served-viewer.ts';

const viewer = viewerForTests();
const elements = fileURLToPath(new URL('../../apps/viewer/src/elements/', import.meta.url));

/** Elements of the page by what their files define; the page itself is shown by all other tests. */
const names = readdirSync(elements)
  .flatMap((file) => [
    ...readFileSync(elements + file, 'utf8').matchAll(/customElements\.define\('([a-z-]+)'/gu),
  ])
  .map(([, name]) => name as string)
  .filter((name) => name !== 'proof-app');

test('each element is shown in its states, all of them say something, none complains, and an independent checker finds nothing', async () => {
  const { page, complaints, elsewhere } = await viewer.open(
    { viewport: { width: 1440, height: 900 } },
    'gallery.html',
  );
  await page.locator('#gallery[data-ready]').waitFor();
  const states = await page.locator('#gallery section').evaluateAll((sections) =>
    sections.map((section) => {
      const { element = '', state = '' } = (section as HTMLElement).dataset;
      const shown = section.querySelector('.held')?.firstElementChild;
      const text = (shown?.shadowRoot ?? shown)?.textContent ?? '';
      return {
        element,
        state,
        isThere: (shown?.getBoundingClientRect().height ?? 0) > 10,
        text: text.replace(/\s+/gu, ' ').trim(),
      };
    }),
  );
  expect(
    states
      .filter(({ isThere, text }) => !isThere || text === '')
      .map(({ element, state }) => `${element}: ${state}`),
  ).toEqual([]);
  for (const name of names) {
    const own = states.filter(({ element }) => element === name);
    expect(own.length, name).toBeGreaterThan(1);
    // a state that looks like another is none; fields of values look alike only in their words
    expect(
      new Set(
        own.map(({ text, state }) =>
          /older|over the page|turned|blank|along|empty|set$/u.test(state) ? state : text,
        ),
      ).size,
      name,
    ).toBe(own.length);
  }
  expect(await breaches(page, ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])).toEqual([]);
  await keepPicture(page, 'gallery');
  expect(complaints).toEqual([]);
  expect(elsewhere).toEqual([]);
});
