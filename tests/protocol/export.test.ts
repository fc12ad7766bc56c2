import path from 'node:path';
import { pathToFileURL } from 'node:url';
import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ExportParams, ExportResult } from '../../server/language/export-protocol.js';
import { readPages } from '../support/pdf-pages.js';
import { readPdf } from '../support/pdf.js';
import { bareClient } from './clients.js';
import { bundle, startServer, startWorker, type Client } from './server.js';

const uri = 'file:///studio/plan.mahl';
const text =
  'plan "Ένα κανάτι"\ncanvas 40 x 30 cm\nobject jug, dominant\n  shape circle 8 at (20, 15)\n  value 2\nallow bare ground because "the wall is the panel"\n';

/** The server in a process of its own, and in a thread that has neither disk nor process. */
const kinds = ['node', 'worker'] as const;

describe.each(kinds)('the server as %s', (kind) => {
  let client: Client;
  let end: () => Promise<void>;

  beforeAll(async () => {
    const { file, remove } = await bundle(kind, true);
    const reference = pathToFileURL(path.resolve(file, '../..')).href;
    const server = kind === 'node' ? startServer(file) : startWorker(file);
    ({ client } = server);
    end = async () => {
      await server.stop();
      await remove();
    };
    await client.initialize(bareClient, { initializationOptions: { reference } });
    await client.open(uri, text);
  });
  afterAll(() => end());

  const exported = (params: Omit<ExportParams, 'textDocument'>) =>
    client.request<ExportResult | null>('mahlstick/export', { textDocument: { uri }, ...params });

  it('gives a view as SVG', async () => {
    const result = await exported({ what: 'notan', format: 'svg', theme: 'dark' });
    expect(result).toMatchObject({ version: 1, remarks: [] });
    expect(result !== null && 'svg' in result ? result.svg : '').toMatch(
      /^<\?xml[^]*data-view="notan"[^]*<\/svg>\n$/,
    );
  });

  it.each([
    ['drawing', undefined, 'jug'],
    ['squint', 'A4', 'Ένα κανάτι'],
    ['sheet', undefined, '“the wall is the panel”'],
  ] as const)('gives %s as PDF', async (what, paper, told) => {
    const result = await exported({ what, format: 'pdf', ...(paper === undefined ? {} : { paper }) });
    const read = await readPdf(Buffer.from(result !== null && 'pdf' in result ? result.pdf : '', 'base64'));
    expect(read.text).toContain(told);
    expect(read.width).toBeGreaterThan(200);
  });

  it('gives the lines at full size on pages of paper, and refuses more than anybody pastes together', async () => {
    const result = await exported({ what: 'pages', format: 'pdf', paper: 'Letter' });
    const pages = await readPages(
      Buffer.from(result !== null && 'pdf' in result ? result.pdf : '', 'base64'),
    );
    expect(pages.length).toBeGreaterThan(2);
    expect(pages[0]?.text).toContain('sheets of Letter');
    expect(Math.min(pages[0]?.width ?? 0, pages[0]?.height ?? 0)).toBeCloseTo(215.9, 1);
    expect(result?.remarks[0]).toMatch(/^Print at 100 %/u);
    const wall = 'file:///studio/wall.mahl';
    await client.open(wall, 'canvas 9 x 6 m\n');
    await expect(
      client.request('mahlstick/export', { textDocument: { uri: wall }, what: 'pages', format: 'pdf' }),
    ).rejects.toThrow(/takes \d+ sheets of A4, and at most 200 are made/u);
  });

  it('gives the sittings as a calendar', async () => {
    const pear = 'file:///studio/ein%20pear.mahl';
    await client.open(
      pear,
      'canvas 40 x 30 cm\nsitting "Lay in" on 2027-03-28\n  task "leave the lights"\ndue 2027-04-01\n',
    );
    const before = Date.now() - 1000;
    const result = await client.request<ExportResult | null>('mahlstick/export', {
      textDocument: { uri: pear },
      what: 'sittings',
      format: 'ics',
    });
    expect(result).toMatchObject({ version: 1, remarks: [] });
    const ics = result !== null && 'ics' in result ? result.ics : '';
    const calendar = new ICAL.Component(ICAL.parse(ics) as unknown[]);
    const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
    expect(events.map(({ startDate, summary }) => [startDate.toString(), summary])).toEqual([
      ['2027-03-28', 'ein pear.mahl: Lay in'],
      ['2027-04-01', 'ein pear.mahl: must be ready'],
    ]);
    const written = events[0]?.component.getFirstPropertyValue('dtstamp');
    expect(written instanceof ICAL.Time ? written.toJSDate().getTime() : 0).toBeGreaterThan(before);
  });

  it('says of a calendar without a sitting that it is empty', async () => {
    expect(await exported({ what: 'sittings', format: 'ics' })).toMatchObject({
      ics: expect.not.stringContaining('VEVENT') as unknown,
      remarks: ['Nothing is planned on any day, so it is empty.'],
    });
  });

  it('refuses what is not well formed, and knows open plans only', async () => {
    await expect(exported({ what: 'photograph' as 'sheet', format: 'pdf' })).rejects.toThrow(
      'not well formed',
    );
    const other = { textDocument: { uri: 'file:///other.mahl' }, what: 'drawing', format: 'svg' };
    expect(await client.request('mahlstick/export', other)).toBeNull();
  });
});
