import { readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { gzipSync } from 'node:zlib';
import type { Finding } from '../report.js';

/** What the package ships, as it is bundled for a release. */
export function measureSize(): Finding {
  const folder = process.env['BENCH_DIST'];
  const names = process.env['BENCH_BUNDLES']?.split(',') ?? [];
  if (folder === undefined) throw new Error('BENCH_DIST names no folder of bundles');
  const sizes = names.map((name) => {
    const bytes = readFileSync(path.join(folder, `${name}.js`));
    return { name, kilobytes: bytes.length / 1000, packed: gzipSync(bytes).length / 1000 };
  });
  const sum = (of: 'kilobytes' | 'packed'): number => sizes.reduce((total, size) => total + size[of], 0);
  const all = [...sizes, { name: 'together', kilobytes: sum('kilobytes'), packed: sum('packed') }];
  return {
    part: 'size',
    data: all,
    tables: [
      {
        title: 'Bundles, minified',
        columns: ['bundle', 'kB', 'gzip, kB'],
        rows: all.map(({ name, kilobytes, packed }) => [name, kilobytes.toFixed(0), packed.toFixed(0)]),
        notes: [],
      },
    ],
  };
}
