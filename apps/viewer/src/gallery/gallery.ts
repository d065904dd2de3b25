import '../no-code-from-text.ts';
import '../look/page.css';
import '../elements/paper.ts';
import '../elements/proof-app.ts';
import { html, render } from 'lit';
import './gallery.css';
import { galleryProof } from './gallery-proof.ts';
import { galleryStates } from './gallery-states.ts';

// For developers and tests, not in the shipped page: `npm run dev -w @pourproof/viewer`, then /gallery.html.
const into = document.querySelector<HTMLElement>('#gallery');
if (into !== null) {
  const states = galleryStates(await galleryProof());
  render(
    html`<h1>Each element in its states</h1>
      ${states.map(
        ({ element, state, shown }) => html`<section data-element=${element} data-state=${state}>
          <h2>${element}: ${state}</h2>
          <div class="held">${shown}</div>
        </section>`,
      )}`,
    into,
  );
  into.dataset.ready = '';
}
