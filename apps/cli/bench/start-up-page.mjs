/**
 * The page of docs/method/start-up.md from what was measured.
 * @param {{ date: string, machine: string, isCompiledKept: boolean, rounds: number, rows: { name: string, aim: number | null, ms: number, ratio: number }[] }} measured
 * @returns {string}
 */
export function startUpPage({ date, machine, isCompiledKept, rounds, rows }) {
  const table = rows.map(
    ({ name, aim, ms, ratio }) =>
      `| ${name} | ${ms.toFixed(0)} | ${ratio.toFixed(1)} | ${aim === null ? '' : `≤ ${aim}`} |`,
  );
  return `# How long the command line takes to start

Rendered by \`node apps/cli/bench/cold-start.mjs --page\` on ${date}: ${machine}${isCompiledKept ? '' : ', which keeps no compiled code'}. Processor time of whole runs with
all their threads, the least of ${rounds}; the machine had other work, so read ratios to a bare \`node -e 0\`.

| run | ms | ratio | aim |
| --- | --- | --- | --- |
${table.join('\n')}

What keeps a start short:

- \`bin/pourproof.js\` loads \`dist/bundle\`, which \`apps/cli/build/bundle.mjs\` makes: a few files in place of hundreds of modules. Each command, each reader, the font shaper with
  its WebAssembly, the sheet, the overlay, the calendar and the check of a report's schema are files that are loaded when they are asked for.
- Flags and lists are tables (\`apps/cli/src/tables\`) whose values are computed when the bundle is made: help and lists load neither settings nor materials.
- Node 22.8 and later keep what they compiled (\`module.enableCompileCache\`, in the folder that Node takes for it; \`NODE_DISABLE_COMPILE_CACHE=1\` turns it off).
- On Node 20 \`bin/pourproof.js\` asks the engine to run code longer before it optimizes it (\`--interrupt-budget=700000\`, ten times its own value). Most of a proof runs
  once, and optimizing took more than half of a small one: by processor time a clear name 1.13 s with the engine's own value, 0.58 s with this, a name with findings 1.66 and 0.87 s, the demo 8.1 and
  6.9 s (before its ways out were tried faster). With six times more the name gains nothing and the demo is slower. Node 22 and 24, which have a compiler between baseline code and the best, take the same
  either way (0.7 s and 0.6 s, 5.5 s and 4.8 s), and are left as they are.

What is refused before the proof (nothing drawn, letters that the font has not) shows what loading, settling and reading take. What bounds a vet is the proof: it runs once, most of it before the engine has compiled it
at all. The same proof takes about a fifth of that time once it is warm, and where there are findings each way out is proved too. Baseline code at once, more room for young objects and fewer threads
stay within the noise (tried with Node 20).
`;
}
