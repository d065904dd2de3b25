/** The page docs/method/performance.md from what was measured. */
export function performancePage({ date, machine, cases, growth }) {
  return `# How long it takes

Rendered by \`npm run bench -- --page\` on ${date}: ${machine}. Processor time, the least of several runs, in one process for all that is
compared, each engine as often as ours and in turn with it; the machine may have had other work, so read ratios. Regenerate it on your own machine: only the ratios should agree.

## Against one opening by other engines
Real lettering: a name of 24 glyphs and the 94 printable characters of ASCII in five faces, capitals 8, 15 and 40 mm high, flattened at 10 µm
and 2 µm; of these 60 combinations this run took ${cases.length}, with ${sum(cases, 'edges').toLocaleString('en')} edges. *Ours* is the medial axis and all that a proof reads from it:
opened area, eroded area, outline of the cut with its area, stroke widths, V volume with a depth cap. *Theirs* is a single opening at
0.8 mm, arcs within 2 µm, coordinates of both clippers to 0.1 µm, which is enough for that and their fastest. *jsts* simplifies what it is given by up to 8 µm at this radius, unless it is told to keep to 2 µm as the others do.

Each ratio is of least times over ${rounds(cases)} rounds; the last column is the median of each round by itself, the lowest and the highest of them.

| ours over | least | median | worst | worst case | aim | cases within it | medians of rounds |
| --- | --- | --- | --- | --- | --- | --- | --- |
${comparisons(cases).join('\n')}

By processor time over all cases the axis takes ${perEdge(cases, 'axisMs')} µs an edge and all measures ${perEdge(cases, 'measuresMs')} µs.
${anchorNote(cases)}
${growthSections(growth)}`;
}

/** The tables of growth and memory, of figures kept by family (`grow.mjs`). */
export function growthSections({ awkward, found, standing }) {
  return `## Growth
Families of regions each of which makes some construction slow (\`packages/geometry/bench/awkward-regions.mjs\`). An exponent is that of the
number of edges, by least squares over all sizes; the aim is 1.15. *Steps* are how often blocks of code are entered while the axis is made, as the engine's own coverage counts
them: the same on every machine and under any load, so they tell what the algorithm does. Times grow faster where arrays outgrow the processor's caches and each look at memory takes
longer: the family of one circle shows that alone, for it has no reflex points to search from. *Standing* are the pieces that four cutters leave which fit at fewer and fewer places;
*whole* is all of these together. Where all clearances are one within rounding (one circle, even ring) it is rounding that decides what those cutters leave, and times from size to size tell nothing.
Families marked 2026-11-30 were measured while others used the machine (load 15 to 18 on two cores), so read steps before times there. Each family was measured on the day that its row tells; \`npm run bench -- --growth [--family NAME]\` measures all of them or one, keeps the figures in
\`packages/geometry/bench/growth.json\` and renders these tables.

${table(awkward)}

### Families found by search
\`packages/geometry/bench/find-worst.mjs\` chooses at random among parametrised families (\`hard-families.mjs\`), climbs from the worst and asks
what is left at a larger size. These are what it found and what was found by others; on all of them the search once went with the square or nearly so
(docs/decisions/0008).

${table(found)}

### What a cutter leaves standing
The pieces that one cutter leaves, on families that once took time by a power of their size.

${table(standing)}

## Memory
Bytes an edge at the largest size measured: of the axis with its region at rest (the aim is 400), and of the whole process at its peak, which
includes Node itself and the making of the region.

| family | edges | at rest | process at its peak | measured |
| --- | --- | --- | --- | --- |
${awkward.map(memoryRow).join('\n')}
`;
}

function table(families) {
  return `| family | edges | axis, µs an edge | steps an edge | exponent of steps | of the axis | of all measures | of standing | of the whole | standing, µs an edge | measured |
| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
${families.map(growthRow).join('\n')}`;
}

/** A page with these tables anew, and the rest as it is. */
export function withGrowth(page, sections) {
  const from = page.indexOf('## Growth\n');
  const to = page.indexOf('\n## A whole proof');
  return page.slice(0, from) + sections + (to < 0 ? '' : page.slice(to));
}

function comparisons(cases) {
  const ours = (c, k) => c.axisMs[k] + c.measuresMs[k];
  const rows = Object.keys(cases[0].theirs).map((name) =>
    comparison(name, cases, AIMS[name], ours, (c, k) => c.theirs[name][k]),
  );
  if (cases[0].anchorMs !== undefined) {
    rows.push(comparison('segment Voronoi diagram, native', cases, 0.4, ours, (c) => c.anchorMs));
  }
  rows.push(comparison('ours (another radius over the first)', cases, 0.05, (c, k) => c.againMs[k], ours));
  return rows;
}

const AIMS = {
  'clipper-lib': 0.15,
  'clipper2-wasm, umd': 1,
  'clipper2-wasm, es': 1,
  jsts: 0.5,
  'jsts at equal tolerance': 0.5,
};

/** A row of the table of ratios; both times by case and round. */
function comparison(name, cases, aim, timeOf, otherTimeOf) {
  const all = Array.from({ length: rounds(cases) }, (_, k) => k);
  const least = (c, time) => Math.min(...all.map((k) => time(c, k)));
  const ratios = cases
    .map((c) => ({ name: c.name, ratio: least(c, timeOf) / least(c, otherTimeOf) }))
    .sort((a, b) => a.ratio - b.ratio);
  const worst = ratios[ratios.length - 1];
  const within = ratios.filter(({ ratio }) => ratio <= aim).length;
  const medians = all
    .map((k) => median(cases.map((c) => timeOf(c, k) / otherTimeOf(c, k))))
    .sort((a, b) => a - b);
  return `| ${[
    name,
    ratios[0].ratio.toFixed(3),
    median(ratios.map(({ ratio }) => ratio)).toFixed(3),
    worst.ratio.toFixed(3),
    worst.name.replace(' um', ' µm'),
    aim,
    `${within} of ${cases.length}`,
    `${medians[0].toFixed(3)} … ${medians[medians.length - 1].toFixed(3)}`,
  ].join(' | ')} |`;
}

function median(list) {
  return list.toSorted((a, b) => a - b)[list.length >> 1];
}

function rounds(cases) {
  return cases[0].axisMs.length;
}

function anchorNote(cases) {
  return cases[0].anchorMs === undefined
    ? 'The native segment Voronoi diagram (Boost.Polygon, an optional anchor) was not found on this machine.\n'
    : 'The native segment Voronoi diagram is that of Boost.Polygon (`boost-anchor.cpp`, compiled with -O2): of all segments, inside and outside.\n';
}

function growthRow({ family, measured, rows }) {
  const each = (digits, of) => rows.map((row) => (of(row) / row.edges).toFixed(digits)).join(', ');
  const hasStanding = rows.every(({ standingMs }) => standingMs !== undefined);
  const slope = (of) => exponent(rows, of).toFixed(2);
  return `| ${[
    family,
    rows.map(({ edges }) => edges.toLocaleString('en')).join(', '),
    each(2, ({ axisMs }) => 1000 * axisMs),
    each(0, ({ steps }) => steps),
    slope(({ steps }) => steps),
    slope(({ axisMs }) => axisMs),
    slope(({ measuresMs }) => measuresMs),
    hasStanding ? slope(({ standingMs }) => standingMs) : 'not measured',
    slope(({ axisMs, measuresMs, standingMs }) => axisMs + measuresMs + (standingMs ?? 0)),
    hasStanding ? each(1, ({ standingMs }) => 1000 * standingMs) : 'not measured',
    measured,
  ].join(' | ')} |`;
}

/** Slope of log time over log edges by least squares. */
function exponent(rows, timeOf) {
  const x = rows.map(({ edges }) => Math.log(edges));
  const y = rows.map((row) => Math.log(timeOf(row)));
  const mean = (list) => list.reduce((a, v) => a + v, 0) / list.length;
  const mx = mean(x);
  const my = mean(y);
  return (
    x.reduce((a, v, i) => a + (v - mx) * (y[i] - my), 0) / x.reduce((a, v) => a + (v - mx) * (v - mx), 0)
  );
}

function memoryRow({ family, memory: { edges, restBytes, peakBytes, measured } }) {
  return `| ${family} | ${edges} | ${Math.round(restBytes / edges)} | ${Math.round(peakBytes / edges)} | ${measured} |`;
}

function perEdge(cases, key) {
  const ms = cases.reduce((total, c) => total + Math.min(...c[key]), 0);
  return ((1000 * ms) / sum(cases, 'edges')).toFixed(2);
}

function sum(cases, key) {
  return cases.reduce((total, c) => total + c[key], 0);
}
