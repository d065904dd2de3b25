// Writes docs/schema/ from the one source of the report and job schemas (npm run schemas).
import { mkdirSync, writeFileSync } from 'node:fs';
import { jsonSchemas } from '@pourproof/proof';

mkdirSync('docs/schema', { recursive: true });
for (const [file, schema] of Object.entries(jsonSchemas())) {
  writeFileSync(`docs/schema/${file}`, `${JSON.stringify(schema, null, 2)}\n`);
  console.log(`docs/schema/${file}`);
}
