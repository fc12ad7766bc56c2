import { encode } from 'fast-png';
import { expect, it } from 'vitest';
import { speaking } from '../../../grammar/index.js';
import german from '../../l10n/bundle.l10n.de.json';
import { shownBytes } from './shown-bytes.js';

it('a picture that can be shown is given as it is', () => {
  const png = encode({ width: 2, height: 1, data: new Uint8Array(8), channels: 4, depth: 8 });
  expect(shownBytes(png, 'photograph')).toEqual({ ok: true, bytes: Uint8Array.from(png) });
});

it('why a photograph or a sketch can’t be shown is told in the language that is spoken', () => {
  const told = (as: 'sketch' | 'photograph') => shownBytes(new TextEncoder().encode('%PDF-1.7'), as);
  const inGerman = (as: 'sketch' | 'photograph') => speaking(german, () => told(as));
  expect(told('photograph')).toEqual({
    ok: false,
    reason: 'This is a PDF. Save the photograph in it as a JPEG.',
  });
  expect(inGerman('photograph')).toEqual({
    ok: false,
    reason: 'Das ist ein PDF. Das Foto darin als JPEG speichern.',
  });
  expect(told('sketch')).toMatchObject({ reason: expect.stringMatching(/^This is /) as string });
  expect(inGerman('sketch')).toMatchObject({ reason: expect.stringMatching(/^Dies ist /) as string });
});
