import { sources } from '@pourproof/materials';
import { judgementSources } from '@pourproof/proof';

const MEANING: Readonly<Record<string, string>> = {
  seen: 'read in the source itself; a note says where only an abstract was readable',
  memory: 'recalled, not checked',
  computed: 'follows from other rows by a formula that a test repeats',
  practice: 'workshop experience without a published source',
  inference: 'our own reasoning',
  prior: 'our own starting guess, to be replaced by coupons',
  entered: 'typed in by the maker',
};

/** The page docs/sources.md: every source with its status. */
export function renderSourcesPage(): string {
  const rows = Object.entries({ ...sources, ...judgementSources }).map(([id, source]) => {
    const about = [source.title, source.year, source.place].filter((part) => part !== undefined).join(', ');
    return `| ${id} | ${about} | ${source.status} | ${source.note ?? ''} |`;
  });
  const statuses = Object.entries(MEANING).map(([status, meaning]) => `- **${status}**: ${meaning}.`);
  return `# Sources

Every number in the tables of \`@pourproof/materials\` names at least one of these, and every finding names those that it rests on.
This page is written from \`packages/materials/src/sources.ts\` and \`packages/proof/src/judgement-sources.ts\`.

What the status of a value means:

${statuses.join('\n')}

A public trade page is a witness of what workshops do, not an authority; where such pages disagree the tables give the spread.

| id | source | status | note |
| --- | --- | --- | --- |
${rows.join('\n')}

## Looked for and not found

Nothing stands in for these, and no result pretends to rest on them: measured streak lengths of epoxy in any wood; the contact angle
of mixed epoxy on these woods; published L\\*a\\*b\\* tables for the four reference woods; permeability and vessel diameters by
wood in a form that could be read; a controlled trial of any seal.
`;
}
