import { CHANGES, JOBS } from './bench-jobs.mjs';
import { WAY_OUT_AIMS } from './way-out-jobs.mjs';

/** Aims of a whole proof with nothing kept, in A, by job. */
const WHOLE_AIMS = { 'flat bit': 5, 'V and clearing bit': 12 };
const HEADING = '## A whole proof';

/** The section of docs/method/performance.md on whole proofs, from what was measured. */
export function proofSection({ date, machine, cases, growth, waysOut }) {
  return `${HEADING}

Rendered by \`npm run bench -- --proof --page\` on ${date}: ${machine}. A is the processor time of the axis and all its measures (above) of the same
artwork in the same run; ${cases.length} combinations of the lettering above, with ${sum(cases, 'edges').toLocaleString('en')} edges. A whole proof is the judging: all figures, the check of
itself, findings and what is drawn but for the bands of colour, which are made when they are looked at. Finding ways out to propose, and then trying them, are rows of their own, with all else kept.
Bits are 1.6 mm wide, the V has 60°; depth 3 mm. Least times of several runs, all in turn in one process.

| what | in A: least | median | worst | aim |
| --- | --- | --- | --- | --- |
${ratioRows(cases).join('\n')}

| whole proof over one opening by clipper-lib | least | median | worst | aim |
| --- | --- | --- | --- | --- |
${Object.keys(JOBS)
  .map((job) =>
    row(
      job,
      cases.map((c) => c.proofs[job].wholeMs / c.openingMs),
      job === 'flat bit' ? 0.15 : '–',
    ),
  )
  .join('\n')}

Growth and memory: lettering of ${growth[0].rows.map(({ count }) => count.toLocaleString('en')).join(', ')} glyphs; the exponent is that of the number of edges by least squares (aim 1.15), the peak is that
of the process less what it held before (aim 1.5 kB an edge).

| whole proof | ms | µs an edge | exponent | peak at ${growth[0].rows.at(-1).edges.toLocaleString('en')} edges, kB an edge |
| --- | --- | --- | --- | --- |
${growth.map(growthRow).join('\n')}

${waysOutTable(waysOut)}`;
}

function waysOutTable(waysOut) {
  return `Ways out: whole jobs as \`vet\` answers them, from reading to the last way out tried; each in a process of its own, the first time in it and the
least of three more times. A is that of the same artwork; the verdict alone is what is known before ways out are tried.

| ways out | edges | first, s | warm, s | aim, s | warm, in A | verdict alone, in A |
| --- | --- | --- | --- | --- | --- | --- |
${waysOut
  .map(
    ({ name, edges, first, warm, judged, axisMs }) =>
      `| ${[
        name,
        edges.toLocaleString('en'),
        first.toFixed(2),
        warm.toFixed(2),
        WAY_OUT_AIMS[name] ?? '–',
        ((1000 * warm) / axisMs).toFixed(0),
        ((1000 * judged) / axisMs).toFixed(0),
      ].join(' | ')} |`,
  )
  .join('\n')}
`;
}

/** A page with this section in the place of the one before, or at its end. */
export function withSection(page, section) {
  const from = page.indexOf(HEADING);
  if (from < 0) {
    return `${page.trimEnd()}\n\n${section}`;
  }
  const next = page.indexOf('\n## ', from + 1);
  return page.slice(0, from) + section + (next < 0 ? '' : page.slice(next));
}

/** That section of a page, as it stands there; empty where there is none. */
export function sectionOf(page) {
  const from = page.indexOf(HEADING);
  const next = page.indexOf('\n## ', from + 1);
  return from < 0 ? '' : page.slice(from, next < 0 ? undefined : next);
}

function ratioRows(cases) {
  return Object.keys(JOBS).flatMap((job) => {
    const inA = (timeOf) => cases.map((c) => timeOf(c.proofs[job]) / c.axisMs);
    const waysOut = cases.every((c) => c.proofs[job].waysOutMs !== undefined)
      ? [
          row(
            `${job}: ways out proposed and tried`,
            inA(({ waysOutMs }) => waysOutMs),
            '–',
          ),
        ]
      : [];
    return [
      row(
        `${job}: nothing kept`,
        inA(({ wholeMs }) => wholeMs),
        WHOLE_AIMS[job] ?? '–',
      ),
      ...CHANGES.map(([what, aim], k) =>
        row(
          `${job}: another ${what}`,
          inA(({ changesMs }) => changesMs[k]),
          aim,
        ),
      ),
      row(
        `${job}: ways out proposed`,
        inA(({ proposedMs }) => proposedMs),
        '–',
      ),
      ...waysOut,
    ];
  });
}

function row(name, ratios, aim) {
  const sorted = ratios.toSorted((a, b) => a - b);
  const told = [sorted[0], sorted[sorted.length >> 1], sorted[sorted.length - 1]];
  return `| ${[name, ...told.map((each) => each.toFixed(2)), aim].join(' | ')} |`;
}

function growthRow({ job, rows }) {
  const last = rows[rows.length - 1];
  return `| ${[
    job,
    rows.map(({ ms }) => ms.toFixed(0)).join(', '),
    rows.map(({ edges, ms }) => ((1000 * ms) / edges).toFixed(0)).join(', '),
    slope(rows).toFixed(2),
    (last.peakBytes / last.edges / 1000).toFixed(2),
  ].join(' | ')} |`;
}

function slope(rows) {
  const x = rows.map(({ edges }) => Math.log(edges));
  const y = rows.map(({ ms }) => Math.log(ms));
  const mean = (list) => list.reduce((a, v) => a + v, 0) / list.length;
  const [mx, my] = [mean(x), mean(y)];
  return x.reduce((a, v, i) => a + (v - mx) * (y[i] - my), 0) / x.reduce((a, v) => a + (v - mx) ** 2, 0);
}

function sum(cases, key) {
  return cases.reduce((total, c) => total + c[key], 0);
}
