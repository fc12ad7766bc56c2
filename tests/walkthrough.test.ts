import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../server/findings/finding.js';
import { plate } from './support/plate.js';
import type { View } from '../server/drawing/scene.js';
import { manifestIn } from './support/manifest.js';
import { checked } from './support/plan.js';

const root = path.resolve(import.meta.dirname, '..');
const folder = path.join(root, 'client/media/walkthrough');
interface Manifest {
  readonly contributes: {
    readonly commands: readonly { readonly command: string }[];
    readonly walkthroughs: readonly {
      readonly steps: readonly {
        readonly id: string;
        readonly description: string;
        readonly media: { readonly svg: string; readonly altText: string };
        readonly completionEvents: readonly string[];
      }[];
    }[];
  };
}

const inEnglish = manifestIn() as Manifest;
const stepsOf = ({ contributes }: Manifest) => contributes.walkthroughs.flatMap(({ steps: all }) => all);
const steps = stepsOf(inEnglish);
const commands = new Set(inEnglish.contributes.commands.map(({ command }) => command));

/** In which view a step's plan is shown, and whether with the marks of what is found. */
const pictures: Readonly<Record<string, { readonly view: View; readonly marked: boolean }>> = {
  begin: { view: 'drawing', marked: false },
  see: { view: 'notan', marked: false },
  read: { view: 'drawing', marked: true },
  move: { view: 'drawing', marked: false },
  'take-out': { view: 'values', marked: false },
};

describe('the walkthrough', () => {
  it.each(steps)('shows in step $id a picture drawn from its plan', ({ id, media }) => {
    const { view, marked } = pictures[id] ?? { view: 'mirror', marked: true };
    const { plan, measures, findings } = checked(readFileSync(path.join(folder, `${id}.mahl`), 'utf8'));
    const shown: readonly Finding[] = marked ? findings : [];
    const drawn = plate(plan, measures, shown, view);
    const file = path.join(root, media.svg);
    if (process.env['UPDATE_REFERENCE']) writeFileSync(file, drawn);
    expect(readFileSync(file, 'utf8')).toBe(drawn);
    expect(media.altText).toMatch(/^[A-Z].*\.$/u);
  });

  it('has a step that shows findings, and they are there', () => {
    const { findings } = checked(readFileSync(path.join(folder, 'read.mahl'), 'utf8'));
    expect(findings.length).toBeGreaterThan(2);
  });

  it.each([undefined, 'de'])('names commands that there are (%s)', (language) => {
    const named = stepsOf(manifestIn(language) as Manifest).flatMap(({ description, completionEvents }) => [
      ...[...description.matchAll(/\(command:([\w.]+)/gu)].map(([, command]) => command),
      ...completionEvents.flatMap((event) => /^onCommand:(.+)$/u.exec(event)?.[1] ?? []),
    ]);
    expect(named.length).toBeGreaterThan(steps.length - 1);
    expect(named.filter((command) => !commands.has(command ?? ''))).toEqual([]);
  });
});
