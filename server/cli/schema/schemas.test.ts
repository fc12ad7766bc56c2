import path from 'node:path';
import { toJsonSchema } from '@valibot/to-json-schema';
import { format as prettify } from 'prettier';
import { describe, expect, it } from 'vitest';
import { checkSchema, checkSchemaId } from './check.js';
import { measureSchema, measureSchemaId } from './measure.js';
import { mixSchema, mixSchemaId } from './mix.js';
import { compareSchema, compareSchemaId } from './compare.js';
import { recordSchema, recordSchemaId } from './record.js';
import { scheduleSchema, scheduleSchemaId } from './schedule.js';
import { transferSchema, transferSchemaId } from './transfer.js';
import { wallSchema, wallSchemaId } from './wall.js';

/** `npx vitest run server/cli/schema -u` writes the files anew; what is published under one id stays compatible. */
async function published(schema: object, id: string): Promise<string> {
  const document = { $id: id, ...schema };
  return prettify(JSON.stringify(document), { parser: 'json', printWidth: 110 });
}

describe('the published schemas', () => {
  it.each([
    ['check-2.json', checkSchema, checkSchemaId],
    ['measure-2.json', measureSchema, measureSchemaId],
    ['mix-1.json', mixSchema, mixSchemaId],
    ['record-1.json', recordSchema, recordSchemaId],
    ['schedule-1.json', scheduleSchema, scheduleSchemaId],
    ['transfer-1.json', transferSchema, transferSchemaId],
    ['wall-1.json', wallSchema, wallSchemaId],
    ['compare-1.json', compareSchema, compareSchemaId],
  ])('%s says what the program says', async (name, schema, id) => {
    const text = await published(toJsonSchema(schema), id);
    expect(id).toBe(`mahlstick/schema/${name}`);
    await expect(text).toMatchFileSnapshot(path.join(import.meta.dirname, name));
  });
});
