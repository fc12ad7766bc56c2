import { readFileSync, writeFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { session } from '../../tests/support/command-line.js';
import type { MeasureDocument } from './schema/measure.js';

const page = readFileSync(path.join(import.meta.dirname, 'README.md'), 'utf8');
const folder = mkdtempSync(path.join(tmpdir(), 'mahlstick-readme-'));

function blocks(language: string): readonly string[] {
  return [...page.matchAll(new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'gm'))].map(
    ([, text = '']) => text,
  );
}

afterAll(() => rmSync(folder, { recursive: true }));

describe('the example of README.md', () => {
  const [plan = ''] = blocks('mahl');
  const [check = '', values = ''] = blocks('json');
  writeFileSync(path.join(folder, 'pear.mahl'), plan);

  it('is checked as shown', async () => {
    const { code, output } = await session(['check', 'pear.mahl'], '', folder);
    expect(output).toBe(blocks('text')[0]);
    expect(code).toBe(1);
  });

  it('is printed as JSON as shown', async () => {
    const { output } = await session(['check', '--json', 'pear.mahl'], '', folder);
    expect(JSON.parse(output)).toEqual(JSON.parse(check));
  });

  it('is measured as shown', async () => {
    const { output } = await session(['measure', '--json', 'pear.mahl'], '', folder);
    expect((JSON.parse(output) as MeasureDocument).values).toEqual(JSON.parse(values));
  });
});
