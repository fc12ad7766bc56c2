import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { nameKey, parse, type SyntaxTree } from '../../grammar/index.js';
import { holdsOf } from '../../server/drawing/handling/grips.js';
import { handlePlace, resized } from '../../server/drawing/handling/frame.js';
import {
  type Frame,
  type FrameHandle,
  frameHandles,
  type Grip,
  sketchCorners,
} from '../../server/drawing/scene.js';
import { subjectsOf } from '../../server/drawing/views/subjects.js';
import type { HandChange } from '../../server/language/hand/change.js';
import { openPlan } from '../../server/language/test-support.js';
import { linesOf } from '../../server/language/text.js';
import { distance, type Point } from '../../server/plan/geometry/point.js';
import type { Plan } from '../../server/plan/plan.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import { written } from '../findings/picture-text.js';
import { picture, scaled } from '../findings/pictures.js';
import { hand } from '../support/hands.js';
import { spoiltPlan } from '../support/spoilt-plans.js';

/** Another seed and more runs from outside, to look further than every test run does. */
const seed = Number(process.env['SEED'] ?? 11);
const runs = Number(process.env['RUNS'] ?? 12);
const PATIENCE = 60_000 + 5_000 * runs;

const CANVASES = [
  ['cm', 1],
  ['mm', 10],
  ['in', 0.4],
  ['m', 0.01],
] as const;

/**
 * Parts of the diagonal: half a thousandth of a metre on the smallest of the canvases; several times that for a point
 * of a shape that is drawn larger than it is written.
 */
const ROUNDED = 0.0015;
const ROUNDED_POINT = 0.002;
/** A lead's place snaps to the middle of an object, and stays on its edge. */
const SNAPPED = 0.021;

const SLACK: Readonly<Record<Grip['kind'], number>> = {
  object: ROUNDED,
  focus: ROUNDED,
  point: ROUNDED_POINT,
  lead: SNAPPED,
  'lead place': SNAPPED,
};

interface Read {
  readonly tree: SyntaxTree;
  readonly plan: Plan;
  readonly grips: readonly Grip[];
  readonly errors: number;
}

function read(text: string): Read {
  const tree = parse(text);
  const plan = resolvePlan(tree);
  const grips = holdsOf(plan, subjectsOf(plan, [])).map(({ grip }) => grip);
  const errors = tree.problems.length + plan.problems.filter(({ severity }) => severity === 'error').length;
  return { tree, plan, grips, errors };
}

/** The keys of all subjects that are placed by this one, by their text, and its own. */
function placedBy(subject: string, { plan }: Read, lines: readonly string[]): ReadonlySet<string> {
  const blocks = [...plan.objects, ...plan.leads].map(
    ({ key, lines: { first, last } = { first: 0, last: -1 } }, index) => ({
      subject: `${index < plan.objects.length ? 'object' : 'lead'}:${key}`,
      // Without the names that they have themselves.
      words: new Set(
        nameKey(lines.slice(first, last + 1).join(' '))
          .split(/[^\p{L}\p{N}'-]+/u)
          .slice(2),
      ),
    }),
  );
  const focus = plan.focus && lines.slice(plan.focus.location.line, plan.focus.location.line + 1).join(' ');
  if (focus !== undefined)
    blocks.push({
      subject: 'focus',
      words: new Set(
        nameKey(focus)
          .split(/[^\p{L}\p{N}'-]+/u)
          .slice(1),
      ),
    });
  const placed = new Set([subject]);
  for (let before = 0; before < placed.size;) {
    before = placed.size;
    const names = [...placed].map((one) => one.replace(/^object:/u, ''));
    for (const block of blocks) if (names.some((name) => block.words.has(name))) placed.add(block.subject);
  }
  return placed;
}

/** What is wrong with a change of what a grip takes hold of, in words; nothing when all is well. */
function faultsOf(
  text: string,
  grip: Grip,
  change: HandChange,
  outcomes: string[],
  isPut: (before: Read, now: Read) => readonly string[],
  mostAdded = 1,
): readonly string[] {
  const { service, uri, failures } = openPlan(text);
  const answer = service.writeChange({ textDocument: { uri }, version: 1, change });
  if (answer === null || failures.length > 0) return [`failed: ${failures.join()}`];
  if ('refused' in answer) {
    outcomes.push(`${change.kind === 'size' ? 'size' : grip.kind} refused`);
    return /^[`A-Z].*[.]$/su.test(answer.refused) ? [] : [`no sentence: ${answer.refused}`];
  }
  outcomes.push(change.kind === 'size' ? 'size' : grip.kind);
  const after = TextDocument.applyEdits(TextDocument.create(uri, 'mahlstick', 1, text), [...answer.edits]);
  const [before, now] = [read(text), read(after)];
  const [old, lines] = [linesOf(text), linesOf(after)];
  const faults = [...isPut(before, now)];
  const { diagonal } = before.plan.canvas;
  if (now.errors > before.errors) faults.push('a new error');
  const comments = ({ tree }: Read): string => tree.comments.map(({ text: words }) => words).join('\n');
  if (comments(before) !== comments(now)) faults.push('other comments');
  const placed = placedBy(grip.subject, before, old);
  for (const { key, subject, at } of before.grips) {
    if (placed.has(subject)) continue;
    const still = now.grips.find((other) => other.key === key);
    if (!still || distance(still.at, at) > 1e-9 * diagonal) faults.push(`${key} moves too`);
  }
  const [subject] = [...before.plan.objects, ...before.plan.leads].filter(({ key }) =>
    [`object:${key}`, `lead:${key}`].includes(grip.subject),
  );
  const line = before.plan.focus?.location.line ?? -1;
  const its =
    grip.kind === 'focus' ? { first: line, last: line } : (subject?.lines ?? { first: 0, last: -1 });
  const added = lines.length - old.length;
  const rest = (all: readonly string[], more: number): string =>
    [...all.slice(0, its.first), ...all.slice(its.last + 1 + more)].join('\n');
  if (rest(old, 0) !== rest(lines, added)) faults.push('other lines change');
  if (added < 0 || added > mostAdded) faults.push(`${added} lines more`);
  return faults.map((fault) => `${fault}\n${after}`);
}

/** The same for a grip that is moved. */
function faultsOfMove(text: string, grip: Grip, to: Point, outcomes: string[]): readonly string[] {
  return faultsOf(text, grip, { kind: 'move', grip: grip.key, to }, outcomes, ({ plan }, { grips }) => {
    const put = grips.find(({ key }) => key === grip.key);
    if (!put) return grip.kind === 'point' ? [] : ['is gone'];
    const slack = plan.canvas.diagonal * SLACK[grip.kind];
    return distance(put.at, to) > slack ? [`lies at ${JSON.stringify(put.at)}`] : [];
  });
}

/**
 * The same for a handle of the frame round an object: the frame becomes what it would be, as far as it can be written.
 */
function faultsOfSize(
  text: string,
  grip: Grip & { readonly frame: Frame },
  handle: FrameHandle,
  to: Point,
  keepsProportion: boolean,
  outcomes: string[],
): readonly string[] {
  const { subject, frame } = grip;
  const wanted = resized(frame, handle, to, keepsProportion);
  const change: HandChange = { kind: 'size', subject, handle, to, keepsProportion };
  const isSized = ({ plan }: Read, { grips }: Read): readonly string[] => {
    const put = grips.find(({ key }) => key === grip.key)?.frame;
    if (!put) return ['has no frame any more'];
    // A `resize` is rounded to a hundredth of a per cent.
    const slack = plan.canvas.diagonal * ROUNDED + 2e-4 * Math.max(frame.width, frame.height);
    const off = frameHandles.filter(
      (each) => distance(handlePlace(put, each), handlePlace(wanted, each)) > slack,
    );
    return off.map((each) => `${each} lies at ${JSON.stringify(handlePlace(put, each))}`);
  };
  return faultsOf(text, grip, change, outcomes, isSized, 2);
}

/** Part of a side of the canvas by which something is moved. */
const part = fc.integer({ min: -300, max: 300 }).map((thousandths) => thousandths / 1_000);
const shift = fc.record({ across: part, down: part, which: fc.nat() });

describe('what is moved by hand in pictures that nobody has thought of', () => {
  it('comes to lie where it was put, and nothing else changes', { timeout: PATIENCE }, () => {
    const outcomes: string[] = [];
    fc.assert(
      fc.property(
        picture,
        fc.constantFrom(...CANVASES),
        hand,
        fc.array(shift, { minLength: 6, maxLength: 12 }),
        (one, [unit, times], write, shifts) => {
          const { text: plain } = written(scaled(one, times));
          const text = write(plain.replace(/^(canvas .*) cm$/mu, `$1 ${unit}`));
          const { grips, plan } = read(text);
          if (grips.length === 0) return;
          for (const { across, down, which } of shifts) {
            const grip = grips[which % grips.length];
            if (!grip) continue;
            const to = {
              x: grip.at.x + across * plan.canvas.width,
              y: grip.at.y + down * plan.canvas.height,
            };
            const faults = faultsOfMove(text, grip, to, outcomes);
            expect(faults.join('\n\n'), `${grip.key} to ${JSON.stringify(to)}\n${text}`).toBe('');
          }
        },
      ),
      { seed, numRuns: runs, endOnFailure: true },
    );
    const done = new Set(outcomes);
    for (const kind of ['object', 'point', 'focus', 'lead', 'lead place']) expect(done).toContain(kind);
    expect(outcomes.filter((outcome) => outcome.endsWith('refused')).length).toBeLessThan(
      0.3 * outcomes.length,
    );
  });

  it('is drawn when it is tried as it is once it is written', { timeout: PATIENCE }, () => {
    fc.assert(
      fc.property(picture, hand, shift, (one, write, { across, down, which }) => {
        const text = write(written(one).text);
        const { grips, plan } = read(text);
        const grip = grips[which % Math.max(1, grips.length)];
        if (!grip) return;
        const to = { x: grip.at.x + across * plan.canvas.width, y: grip.at.y + down * plan.canvas.height };
        const change: HandChange = { kind: 'move', grip: grip.key, to };
        const { service, uri } = openPlan(text);
        const asked = { textDocument: { uri }, version: 1, change };
        const [tried, made] = [service.tryChange({ ...asked, view: 'values' }), service.writeChange(asked)];
        if (!made || 'refused' in made) {
          expect(tried).toEqual(made);
          return;
        }
        service.change(
          uri,
          2,
          made.edits.toReversed().map(({ range, newText }) => ({ range, text: newText })),
        );
        const scene = service.scene(uri, 'values', { handling: true });
        expect(tried).toEqual({ version: 1, scene });
      }),
      { seed, numRuns: Math.ceil(runs / 3), endOnFailure: true },
    );
  });
});

describe('what is sized by hand in pictures that nobody has thought of', () => {
  it(
    'has its handle where it was put and the opposite one where it was, and nothing else changes',
    {
      timeout: PATIENCE,
    },
    () => {
      const outcomes: string[] = [];
      const sizing = fc.record({
        across: part,
        down: part,
        which: fc.nat(),
        handle: fc.constantFrom(...frameHandles),
        keepsProportion: fc.boolean(),
      });
      fc.assert(
        fc.property(
          picture,
          fc.constantFrom(...CANVASES),
          hand,
          fc.array(sizing, { minLength: 6, maxLength: 12 }),
          (one, [unit, times], write, sizings) => {
            const { text: plain } = written(scaled(one, times));
            const text = write(plain.replace(/^(canvas .*) cm$/mu, `$1 ${unit}`));
            const { grips, plan } = read(text);
            const framed = grips.flatMap((grip) => (grip.frame ? [{ ...grip, frame: grip.frame }] : []));
            for (const { across, down, which, handle, keepsProportion } of sizings) {
              const grip = framed[which % Math.max(1, framed.length)];
              if (!grip) return;
              const { x, y } = handlePlace(grip.frame, handle);
              const to = { x: x + across * plan.canvas.width, y: y + down * plan.canvas.height };
              const faults = faultsOfSize(text, grip, handle, to, keepsProportion, outcomes);
              const what = `${handle} of ${grip.key} to ${JSON.stringify(to)} ${keepsProportion}`;
              expect(faults.join('\n\n'), `${what}\n${text}`).toBe('');
            }
          },
        ),
        { seed, numRuns: runs, endOnFailure: true },
      );
      expect(outcomes).toContain('size');
      expect(outcomes.filter((outcome) => outcome.endsWith('refused')).length).toBeLessThan(
        0.3 * outcomes.length,
      );
    },
  );
});

const root = path.resolve(import.meta.dirname, '../..');

describe('what is moved by hand in the plans of', () => {
  it.each(['examples', 'tests/books', 'server/measure/plans'])(
    '%s comes to lie where it was put, and nothing else changes',
    { timeout: PATIENCE },
    (folder) => {
      const names = readdirSync(path.join(root, folder)).filter((name) => name.endsWith('.mahl'));
      for (const name of names) {
        const text = readFileSync(path.join(root, folder, name), 'utf8');
        const { grips, plan } = read(text);
        // One in so many, so that every kind has its turn in some plan.
        const step = Math.ceil(grips.length / 12);
        for (const grip of grips.filter((_, index) => index % step === 0)) {
          const to = { x: grip.at.x + 0.07 * plan.canvas.width, y: grip.at.y - 0.04 * plan.canvas.height };
          expect(faultsOfMove(text, grip, to, []).join('\n\n'), `${name}: ${grip.key}`).toBe('');
        }
      }
    },
  );
});

const names = ['door', 'wall', 'loaves', 'hook', 'sky', 'jug', '__proto__', ''];
const anySpot = fc.record({
  x: fc.oneof(fc.integer({ min: -90, max: 90 }), fc.constantFrom(1e300, -1e12, 1e-9)),
  y: fc.oneof(fc.integer({ min: -90, max: 90 }), fc.constantFrom(1e300, 0)),
});
const anySubject = fc.constantFrom(...names).map((name) => `object:${name}`);
const anyPoints = fc.array(anySpot, { minLength: 2, maxLength: 12 });
const anyChange: fc.Arbitrary<HandChange> = fc.oneof(
  fc.record({ kind: fc.constant('move' as const), grip: anySubject, to: anySpot }),
  fc.record({
    kind: fc.constant('resize' as const),
    subject: anySubject,
    factor: fc.constantFrom(1e-9, 0.5, 2, 1e12),
  }),
  fc.record({
    kind: fc.constant('size' as const),
    subject: anySubject,
    handle: fc.constantFrom(...frameHandles),
    to: anySpot,
    keepsProportion: fc.boolean(),
  }),
  fc.record({
    kind: fc.constant('sketch corner' as const),
    corner: fc.constantFrom(...sketchCorners),
    to: anySpot,
    width: fc.constantFrom(1, 800, 4_000),
    height: fc.constantFrom(1, 600),
  }),
  fc.record({
    kind: fc.constant('value' as const),
    subject: anySubject,
    step: fc.constantFrom(-1, 0, 1, 3, 2.4, 1e9),
  }),
  fc.record({
    kind: fc.constant('colour' as const),
    subject: anySubject,
    colour: fc.constantFrom('soot', 'navy', '#123', '#12', 'rgb(1 2 3) // ', 'a\nobject b', '"', 'N 5/'),
  }),
  fc.record({
    kind: fc.constant('new box' as const),
    form: fc.constantFrom('rectangle' as const, 'ellipse' as const),
    from: anySpot,
    to: anySpot,
  }),
  fc.record({
    kind: fc.constant('new line' as const),
    form: fc.constantFrom('outline' as const, 'lead' as const),
    points: anyPoints,
  }),
  fc.record({
    kind: fc.constant('crossing' as const),
    name: fc.constantFrom('golden upper left', 'own crossing 1 1', 'thirds lower right', 'focal point', 'x'),
  }),
);

/** The change of something that the plan has, where it has anything. */
function aboutSomething(change: HandChange, grip: Grip | undefined): HandChange {
  if (!grip) return change;
  if (change.kind === 'move') return { ...change, grip: grip.key };
  return 'subject' in change && grip.kind === 'object' ? { ...change, subject: grip.subject } : change;
}

describe('any change of a plan with slips in it', () => {
  it('is refused in a sentence, or made without a new error', { timeout: PATIENCE }, () => {
    const made: string[] = [];
    fc.assert(
      fc.property(spoiltPlan, anyChange, fc.nat(), (text, change, which) => {
        const { grips } = read(text);
        const own = aboutSomething(change, grips[which % Math.max(1, grips.length)]);
        const { service, uri } = openPlan(text);
        const answer = service.writeChange({ textDocument: { uri }, version: 1, change: own });
        if (!answer || 'refused' in answer) {
          expect(answer?.refused).toMatch(/[.!?]$/u);
          return;
        }
        made.push(own.kind);
        const document = TextDocument.create(uri, 'mahlstick', 1, text);
        const after = TextDocument.applyEdits(document, [...answer.edits]);
        expect(read(after).errors, `${JSON.stringify(own)}\n${after}\n\n${text}`).toBeLessThanOrEqual(
          read(text).errors,
        );
      }),
      { seed, numRuns: 8 * runs, endOnFailure: true },
    );
    // So that they are made at all.
    expect(new Set(made).size).toBeGreaterThan(4);
  });
});
