// Writes the JSON Schema of the job file into public/. Run after a change of src/model/schema: `npx tsx tools/write-schema.ts`.
import { writeFileSync } from 'node:fs';
import { jobJsonSchema } from '../src/model/schema/json-schema.ts';

writeFileSync(
  new URL('../public/shearsight-job.schema.json', import.meta.url),
  `${JSON.stringify(jobJsonSchema(), null, 1)}\n`,
);
