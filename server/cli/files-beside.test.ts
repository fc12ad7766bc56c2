import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { toldAnswer } from '../../tests/support/told-answer.js';
import { filesBeside, picturesBeside } from './files-beside.js';

const top = mkdtempSync(path.join(tmpdir(), 'mahlstick-beside-'));
const plans = path.join(top, 'studio', 'plans');
const outside = {
  ok: false,
  reason: "This file lies outside the plan's folder and outside the folder you are in.",
};

beforeAll(() => {
  mkdirSync(path.join(plans, 'parts'), { recursive: true });
  writeFileSync(path.join(plans, 'parts', 'door.svg'), '<svg/>');
  writeFileSync(path.join(top, 'studio', 'shared.svg'), '<svg id="shared"/>');
  writeFileSync(path.join(top, 'secret.txt'), 'secret');
  writeFileSync(path.join(plans, 'latin.svg'), Buffer.from([0x3c, 0xfc]));
  writeFileSync(path.join(plans, 'huge.svg'), '');
  truncateSync(path.join(plans, 'huge.svg'), 5 * 1024 * 1024 + 1);
  writeFileSync(path.join(plans, 'huge.jpg'), '');
  truncateSync(path.join(plans, 'huge.jpg'), 100 * 1024 * 1024 + 1);
  symlinkSync(path.join(top, 'secret.txt'), path.join(plans, 'leak.svg'));
  symlinkSync(path.join(plans, 'parts', 'door.svg'), path.join(plans, 'inside.svg'));
  symlinkSync(path.join(plans, 'nothing.svg'), path.join(plans, 'dangling.svg'));
});

afterAll(() => rmSync(top, { recursive: true }));

describe('filesBeside', () => {
  it('reads what lies in and below the folder of the plan', () => {
    const read = filesBeside(plans, plans);
    expect(read('parts/door.svg')).toEqual({ ok: true, text: '<svg/>' });
    expect(read('parts\\door.svg')).toEqual({ ok: true, text: '<svg/>' });
    expect(read('inside.svg')).toEqual({ ok: true, text: '<svg/>' });
  });

  it('climbs out of that folder only as far as the current one', () => {
    expect(filesBeside(plans, path.join(top, 'studio'))('../shared.svg')).toMatchObject({ ok: true });
    expect(filesBeside(plans, plans)('../shared.svg')).toEqual(outside);
    expect(filesBeside(plans, path.join(top, 'studio'))('../../secret.txt')).toEqual(outside);
  });

  it('tells nothing of what lies outside, not even whether it is there', () => {
    expect(filesBeside(plans, plans)('../../no-such-file')).toEqual(outside);
  });

  it('follows no link that leads out', () => {
    expect(filesBeside(plans, plans)('leak.svg')).toEqual(outside);
  });

  it.each([
    ['', 'No file is named.'],
    ['/etc/passwd', 'Files are named by their path from the plan, not from the top of the disk.'],
    ['\\\\server\\share', 'Files are named by their path from the plan, not from the top of the disk.'],
    ['C:\\door.svg', 'Files are named by their path from the plan, not by an address.'],
    ['https://example.org/door.svg', 'Files are named by their path from the plan, not by an address.'],
    ['door\0.svg', 'This holds a character that no file name can hold.'],
    ['nothing.svg', 'There is no such file.'],
    ['dangling.svg', 'There is no such file.'],
    ['parts', 'This is not a file.'],
    ['huge.svg', 'This file is larger than 5 MB.'],
    [
      'latin.svg',
      'This file is no text in UTF-8: byte 2 of line 1 belongs to another encoding; save it as UTF-8.',
    ],
  ])('refuses %j with a reason', (written, reason) => {
    const answer = filesBeside(plans, plans)(written);
    expect(answer && toldAnswer(answer)).toEqual({ ok: false, reason });
  });
});

describe('picturesBeside', () => {
  it('reads bytes as they are, larger ones than texts may be', () => {
    const read = picturesBeside(plans, plans)('huge.svg');
    expect(read.ok && read.bytes.length).toBe(5 * 1024 * 1024 + 1);
    expect(picturesBeside(plans, plans)('latin.svg')).toMatchObject({ ok: true });
  });

  it.each([
    ['../../secret.txt', outside.reason],
    ['leak.svg', outside.reason],
    ['parts', 'This is not a file.'],
    ['none.jpg', 'There is no such file.'],
    ['huge.jpg', 'This file is larger than 100 MB.'],
    ['/etc/passwd', 'Files are named by their path from the plan, not from the top of the disk.'],
  ])('refuses %s as texts are refused', (name, reason) => {
    expect(toldAnswer(picturesBeside(plans, plans)(name))).toEqual({ ok: false, reason });
  });
});
