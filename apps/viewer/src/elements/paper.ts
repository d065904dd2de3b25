import { keepUnits } from '@pourproof/plane';
import {
  bitsOfRounds,
  calendarFile,
  cutSentences,
  jobFacts,
  measureFacts,
  notAsDrawn,
  resinFacts,
  roundFacts,
  workFacts,
} from '@pourproof/wording';
import { html, nothing, type TemplateResult } from 'lit';
import type { Layer } from '../draw/layer.ts';
import { isolated } from '../look/isolated.ts';
import { fileStem } from '../model/saved-files.ts';
import type { Selection } from '../model/selection.ts';
import type { ShownProof } from '../model/shown-proof.ts';
import './fact-table.ts';
import './finding-list.ts';
import './notice-list.ts';
import './proof-sheet.ts';
import { saveFile } from './save-file.ts';
import './sheet-legend.ts';

// What shows a proof. It is loaded when the first proof is asked for: the drawing library and the words of findings and measures are in here alone.
export { jobLine } from '../model/job-line.ts';
export { shownProof } from '../model/shown-proof.ts';

/** The artwork on its sheet, with what its marks and colours mean. */
export function picture(shown: ShownProof | null, layer: Layer, selection: Selection | null): TemplateResult {
  return html`
    <proof-sheet
      ?hidden=${shown === null}
      .picture=${shown?.picture ?? null}
      .layer=${layer}
      .entries=${shown?.entries ?? []}
      .selection=${selection}
      .unit=${shown?.unit ?? 'mm'}
    ></proof-sheet>
    <sheet-legend
      .picture=${shown?.picture ?? null}
      .layer=${layer}
      .unit=${shown?.unit ?? 'mm'}
      ?hidden=${shown === null}
    ></sheet-legend>
  `;
}

/** Findings, notices and what the printed sheet lists, in the same words. */
export function remarks(
  shown: ShownProof | null,
  selection: Selection | null,
  isOld: boolean,
): TemplateResult {
  return html`
    <h2>Findings</h2>
    <finding-list .proof=${shown} .selection=${selection} .isOld=${isOld}></finding-list>
    <notice-list .proof=${shown} .isOld=${isOld}></notice-list>
    ${shown === null ? nothing : facts(shown)}
  `;
}

/** Right under the verdict, which holds for the artwork as read. */
export function notDrawn({ report }: ShownProof): TemplateResult | typeof nothing {
  const notices = notAsDrawn(report);
  return notices.length === 0
    ? nothing
    : html`<div class="not-drawn"><b>Not as drawn</b><ul>${notices.map(({ text }) => html`<li>${isolated(text)}</li>`)}</ul></div>`;
}

function facts(shown: ShownProof): TemplateResult {
  const { report, settled, unit } = shown;
  const isDated = report.pour.schedule.some(({ earliest }) => earliest !== undefined);
  return html`
    <h3>Measures</h3>
    <p class="lead">${keepUnits(cutSentences(report, unit).join(' '))}</p>
    <fact-table .facts=${measureFacts(report, unit)}></fact-table>
    ${report.rounds === undefined ? nothing : html`<h3>Rounds</h3><fact-table .facts=${roundFacts(report, unit)}></fact-table>`}
    <h3>Resin</h3>
    <fact-table .facts=${resinFacts(report, unit)}></fact-table>
    <h3>The work</h3>
    <p class="calendar no-print">
      <button type="button" ?disabled=${!isDated} @click=${() => saveCalendar(shown)}>Save calendar (.ics)</button>
      ${isDated ? nothing : html`<span class="soft">Say under “Shop and dates” when carving starts, and the steps get dates.</span>`}
    </p>
    <fact-table .facts=${workFacts(report)}></fact-table>
    <h3>The job</h3>
    <fact-table .facts=${jobFacts(settled)}></fact-table>
  `;
}

async function saveCalendar({ report, source, unit }: ShownProof): Promise<void> {
  const { schedule } = report.pour;
  const text = await calendarFile(report.artwork.file, schedule, bitsOfRounds(report, unit));
  saveFile({ name: `${fileStem(source.name)}.ics`, type: 'text/calendar', content: text });
}
