import { describe, expect, it } from 'vitest';
import { type Reason, reasonInWords, reasonOf, speaking } from '../../grammar/index.js';
import { german } from '../../server/entry/german.js';
import { check } from '../../server/findings/check.js';
import { AskedPictures } from '../../server/language/asked-pictures.js';
import { tooLarge } from '../../server/language/file-size.js';
import { tooManyFiles } from '../../server/language/files.js';
import { measure } from '../../server/measure/measure.js';
import type { Photographs } from '../../server/measure/photograph/photographs.js';
import { decode } from '../../server/photograph/codec/decode.js';
import { readProfile } from '../../server/photograph/colour/icc.js';
import { cornersIn } from '../../server/photograph/corners.js';
import { headOf } from '../../server/photograph/head/head.js';
import { photographLimitBytes, refusalOfSize } from '../../server/photograph/limits.js';
import { squarePhotograph } from '../../server/photograph/square.js';
import { mozJpeg, quarters } from '../photographs/made.js';
import { makeProfile } from '../photographs/profiles.js';
import { at, whole } from '../photographs/squaring.js';
import { planOf } from '../support/plan.js';

type Answer = { readonly ok: true } | { readonly ok: false; readonly reason: string | Reason };

const upright = { width: 400, height: 300 };
const tables = new Uint8Array(40);

/** A small JPEG in which a byte of its frame is another. */
async function jpegWith(offset: number, value: number): Promise<Uint8Array> {
  const bytes = Uint8Array.from(await mozJpeg(quarters(40, 24)));
  const frame = bytes.findIndex((byte, index) => byte === 0xff && bytes[index + 1] === 0xc0);
  bytes[frame + offset] = value;
  return bytes;
}

async function decodedAsWider(): Promise<Answer> {
  const bytes = await mozJpeg(quarters(40, 24));
  const answer = headOf(bytes);
  return answer.ok ? decode(bytes, { ...answer.head, width: 41 }) : answer;
}

function hundredPicturesAndOne(): Answer {
  const pictures = new AskedPictures();
  const answers = Array.from({ length: 101 }, (_, index) => {
    const found = pictures.named(`file:///studio/${index}.jpg`, `${index}.jpg`, 'file:///studio/plan.mahl');
    if ('ok' in found) return found;
    found.size.askedBy.add('file:///studio/plan.mahl', 1);
    return { ok: true } as const;
  });
  return answers.find(({ ok }) => !ok) ?? { ok: true };
}

const refused = (reason: string | Reason | undefined): Answer =>
  reason === undefined ? { ok: true } : { ok: false, reason };

const corners = (...places: readonly (readonly [number, number])[]): Answer =>
  cornersIn({ corners: places.map(([x, y]) => at(x, y)) }, upright);

describe('why a photograph or a file can’t be had', () => {
  it.each<readonly [() => Answer | Promise<Answer>, english: string, german: string]>([
    [
      decodedAsWider,
      'This JPEG says that it has 41 × 24 pixels and holds 40 × 24. Save it anew.',
      'Dieses JPEG sagt, dass es 41 × 24 Pixel hat, und enthält 40 × 24. Neu speichern.',
    ],
    [
      async () => headOf(await jpegWith(4, 12)),
      'This JPEG has 12 bits a channel; those that can be read have 8. Save it anew.',
      'Dieses JPEG hat 12 Bit je Farbkanal; lesbar sind solche mit 8. Neu speichern.',
    ],
    [
      () =>
        refused(
          refusalOfSize(photographLimitBytes, {
            width: 31_000,
            height: 2000,
            bits: 8,
            isProgressive: false,
            type: 'PNG',
          }),
        ),
      'This PNG has 31000 × 2000 pixels, 62 million; 100 million can be measured, and 30000 a side. Save it smaller: 3000 pixels across are plenty.',
      'Dieses PNG hat 31000 × 2000 Pixel, 62 Mio.; messbar sind 100 Mio., und 30000 an einer Seite. Kleiner speichern: 3000 Pixel in der Breite sind reichlich.',
    ],
    [
      () => corners([0, 0], [400, 0], [400, 320], [0, 300]),
      'The lower right corner lies outside the photograph, which is 400 × 300 pixels.',
      'Die Ecke unten rechts liegt außerhalb des Fotos, das 400 × 300 Pixel hat.',
    ],
    [
      () => readProfile(makeProfile({ curves: [], columns: [], tags: [['A2B0', tables]] })),
      'The colour profile in this photograph, Made for a test, is made of tables, which are not read here. Save the photograph anew in sRGB or Display P3.',
      'Das Farbprofil in diesem Foto, Made for a test, besteht aus Tabellen, die hier nicht gelesen werden. Das Foto neu in sRGB oder Display P3 speichern.',
    ],
    [
      async () =>
        squarePhotograph(await mozJpeg(quarters(40, 24)), whole, {
          progress: () => {
            throw new Error('out of order');
          },
        }),
      'This photograph could not be measured (out of order).',
      'Dieses Foto ließ sich nicht messen (out of order).',
    ],
    [
      () => tooManyFiles,
      'A plan can name 200 files, and this one names more.',
      'Ein Plan kann 200 Dateien nennen, und dieser nennt mehr.',
    ],
    [
      hundredPicturesAndOne,
      'A plan can name 100 pictures, and this one names more.',
      'Ein Plan kann 100 Bilder nennen, und dieser nennt mehr.',
    ],
    [
      () => refused(tooLarge(photographLimitBytes)),
      'This file is larger than 100 MB.',
      'Diese Datei ist größer als 100 MB.',
    ],
  ])(
    'is kept, crosses threads, and is told in English and in German: %#',
    async (asked, english, inGerman) => {
      const answer = structuredClone(await asked());
      const told = (): string => (answer.ok ? 'it was had' : reasonInWords(answer.reason));
      expect(told()).toBe(english);
      expect(speaking(german, told)).toBe(inGerman);
    },
  );

  it('is put into what is told of a plan', () => {
    const text = [
      'canvas 40 x 30 cm',
      'object jug',
      '  shape from "jug.svg"',
      '  value 3',
      'sitting "Start" on 2027-03-01',
      '  photo "start.jpg"',
    ].join('\n');
    const photographs: Photographs = {
      squared: () => ({ ok: false, reason: reasonOf('A canvas has four corners; `corners` gives {0}.', 3) }),
      sizeOf: () => undefined,
    };
    const told = (): readonly (string | undefined)[] => {
      const plan = planOf(text, { readFile: () => ({ ok: false, reason: tooLarge(5 * 1024 * 1024) }) });
      const findings = check(plan, measure(plan, undefined, undefined, photographs));
      return [
        ...plan.problems.map(({ message }) => message),
        findings.find(({ rule }) => rule === 'unreadable photograph')?.message,
      ];
    };
    expect(told()).toEqual([
      '`jug.svg` cannot be read. This file is larger than 5 MB.',
      'The photograph of “Start” on 1 March 2027 can’t be used. A canvas has four corners; `corners` gives 3.',
    ]);
    expect(speaking(german, told)).toEqual([
      '`jug.svg` lässt sich nicht lesen. Diese Datei ist größer als 5 MB.',
      'Das Foto von „Start“ am 1. März 2027 ist nicht zu gebrauchen. Eine Leinwand hat vier Ecken; `corners` nennt 3.',
    ]);
  });
});
