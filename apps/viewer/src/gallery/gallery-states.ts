import { measureFacts } from '@pourproof/wording';
import { html, type TemplateResult } from 'lit';
import { pageFoot } from '../elements/page-foot.ts';
import { JOB_GROUPS } from '../model/job-fields.ts';
import { USUAL_TABLES } from '../model/shelf.ts';
import type { GalleryProof } from './gallery-proof.ts';

/** An element in one of its states. */
export interface GalleryState {
  readonly element: string;
  readonly state: string;
  readonly shown: TemplateResult;
}

const SHELF = {
  shop: { name: 'a-long-name-of-a-shop-file-without-any-space.json', data: {} },
  materials: { name: 'materials.json', data: {} },
  coupons: [],
};
const JOBS = [
  { id: 'a', name: 'sign.svg', isDemo: false, savedAt: 1_790_000_000_000, stepCount: 4 },
  { id: 'b', name: 'שלט.svg', isDemo: false, savedAt: 1_789_000_000_000, stepCount: 2 },
  { id: 'c', name: 'board.svg', isDemo: true, savedAt: 1_788_000_000_000, stepCount: 9 },
];
const STEPS = ['The demo', 'Opened sign.svg', 'Depth of the pocket: 4mm', 'Fibres: 30deg'];
const REFUSED = { what: 'The file is empty.', where: 'empty.svg', remedy: 'Export it again.' };
const FAULT = {
  what: 'pourproof could not finish this proof.',
  where: 'the colours add up to the cut, but it is 1 where 2 mm² is due',
  remedy: 'Please save the file below.',
};

/** All elements of the page, each in the states that it has. */
export function galleryStates(proof: GalleryProof): readonly GalleryState[] {
  return [...intoThePage(), ...ticket(), ...results(proof), ...around()];
}

function of(element: string, states: Readonly<Record<string, TemplateResult>>): readonly GalleryState[] {
  return Object.entries(states).map(([state, shown]) => ({ element, state, shown }));
}

function intoThePage(): readonly GalleryState[] {
  return [
    ...of('drop-zone', {
      blank: html`<drop-zone></drop-zone>`,
      'files over the page': html`<drop-zone .isOver=${true}></drop-zone>`,
      'a file, all of the shelf': html`<drop-zone .fileName=${'sign.svg'} .shelf=${SHELF} .coupons=${3}></drop-zone>`,
      'the demo': html`<drop-zone .fileName=${'board.svg'} .isDemo=${true} .hasOwn=${true}></drop-zone>`,
      'what was wrong': html`<drop-zone .note=${'job.json is not JSON.'}></drop-zone>`,
    }),
    ...of('name-field', {
      empty: html`<name-field></name-field>`,
      set: html`<name-field .text=${'Ellerwick'} .choice=${'arvo-400.ttf'}></name-field>`,
      'two lines, own font': html`<name-field .text=${'שלום\nElm'} .choice=${'own'} .ownFont=${'mine.ttf'}></name-field>`,
    }),
    ...of('lettering-form', {
      folded: html`<lettering-form></lettering-form>`,
      'single strokes': html`<lettering-form .job=${{ singleLine: true }} .text=${'ELM'}></lettering-form>`,
    }),
  ];
}

function ticket(): readonly GalleryState[] {
  const fields = JOB_GROUPS.flatMap((group) => group.fields);
  const forms = new Map(fields.map((field) => [field.form, field]));
  return [
    ...of('bit-list', {
      'as usual': html`<bit-list></bit-list>`,
      'two bits': html`<bit-list .job=${{ bit: ['flat:3mm', 'vee:60deg:1/2in'] }}></bit-list>`,
    }),
    ...of('grain-field', {
      along: html`<grain-field></grain-field>`,
      turned: html`<grain-field .job=${{ grain: '37.5deg' }}></grain-field>`,
    }),
    ...of(
      'job-field',
      Object.fromEntries(
        [...forms].map(([form, field]) => [
          form,
          html`<job-field .field=${field} .job=${{}} .tables=${USUAL_TABLES}></job-field>`,
        ]),
      ),
    ),
    ...of('job-form', {
      'as usual': html`<job-form></job-form>`,
      'a glue-up': html`<job-form .job=${{ board: 'stripes 300x180x20mm maple:40mm walnut:20mm', seal: 'epoxy' }}></job-form>`,
    }),
  ];
}

function results({ judged, whole }: GalleryProof): readonly GalleryState[] {
  const [first] = whole.entries;
  const selection = { code: first?.id ?? '', place: 0 };
  const sheet = (
    layer: 'cut' | 'levelling',
    chosen: typeof selection | null,
  ): TemplateResult => html`<proof-sheet
    .picture=${whole.picture}
    .layer=${layer}
    .entries=${whole.entries}
    .selection=${chosen}
  ></proof-sheet>`;
  return [
    ...of('proof-sheet', {
      cut: sheet('cut', null),
      'a place chosen': sheet('cut', selection),
      levelling: sheet('levelling', null),
    }),
    ...of('sheet-legend', {
      'before a proof': html`<sheet-legend stacked></sheet-legend>`,
      cut: html`<sheet-legend .picture=${whole.picture}></sheet-legend>`,
      levelling: html`<sheet-legend .picture=${whole.picture} .layer=${'levelling'}></sheet-legend>`,
    }),
    ...of('finding-list', {
      'ways out are tried': html`<finding-list .proof=${judged} .selection=${selection}></finding-list>`,
      'one is open': html`<finding-list .proof=${whole} .selection=${selection}></finding-list>`,
      'an older proof': html`<finding-list .proof=${whole} .selection=${selection} .isOld=${true}></finding-list>`,
      'nothing found': html`<finding-list .proof=${{ ...whole, entries: [] }}></finding-list>`,
    }),
    ...of('notice-list', {
      'from reading': html`<notice-list .proof=${whole}></notice-list>`,
      'of an older proof': html`<notice-list .proof=${whole} .isOld=${true}></notice-list>`,
    }),
    ...of('fact-table', {
      millimetres: html`<fact-table .facts=${measureFacts(whole.report, 'mm')}></fact-table>`,
      inches: html`<fact-table .facts=${measureFacts(whole.report, 'in')}></fact-table>`,
    }),
    ...of('failure-note', {
      refused: html`<failure-note .failure=${REFUSED}></failure-note>`,
      'a fault of ours': html`<failure-note .failure=${{ ...FAULT, bundle: {} }}></failure-note>`,
    }),
  ];
}

function around(): readonly GalleryState[] {
  const foot = (state: 'none' | 'ready' | 'newer', isAlone: boolean): TemplateResult =>
    pageFoot({ state, isAlone, take: () => {} });
  return [
    ...of('step-strip', {
      'in the middle': html`<step-strip .steps=${STEPS} .at=${1}></step-strip>`,
      'the last of many': html`<step-strip .steps=${[...STEPS, ...STEPS, ...STEPS]} .at=${11} .isCut=${true}></step-strip>`,
    }),
    ...of('kept-jobs', {
      none: html`<kept-jobs></kept-jobs>`,
      three: html`<kept-jobs .jobs=${JOBS} .own=${'a'} .elsewhere=${new Set(['b'])}></kept-jobs>`,
      'nothing is kept': html`<kept-jobs .keeping=${'unavailable'}></kept-jobs>`,
      'no room': html`<kept-jobs .keeping=${'full'} .jobs=${JOBS}></kept-jobs>`,
      'it failed': html`<kept-jobs .keeping=${'failed'}></kept-jobs>`,
      'other tabs': html`<kept-jobs .said=${'“שלט.svg” is open in another tab.'} .isOffered=${true}></kept-jobs>`,
    }),
    ...of('page-foot', {
      'with a connection': foot('none', true),
      'without one too': foot('ready', true),
      'a newer version': foot('newer', true),
      'a newer version, other tabs': foot('newer', false),
    }),
  ];
}
