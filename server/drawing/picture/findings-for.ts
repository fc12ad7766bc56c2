import type { Chapter, Finding } from '../../findings/finding.js';
import { chapters } from '../../findings/finding.js';
import { ruleById } from '../../findings/rules.js';
import type { Point } from '../../plan/geometry/point.js';
import { budgetRules } from '../captions/budgets.js';
import type { View } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { regionOf } from './region.js';

/** A finding that a view shows. */
export interface ShownFinding {
  readonly finding: Finding;
  readonly subject: string;
  /** Where in the picture its mark belongs, with the number that it bears there; missing for one without a mark. */
  readonly mark?: { readonly number: number; readonly wanted: Point };
}

/** What findings a view shows: those of whole chapters of the reference, and single rules of others. */
interface Shown {
  readonly chapters: readonly Chapter[];
  readonly rules?: readonly string[];
  /** What is not in the reference is about the plan's own words, and stands here. */
  readonly ownWords?: true;
}

/** A squint and a mirror are for looking with a fresh eye: nothing is marked there. */
const SHOWN: Readonly<Record<View, Shown>> = {
  // Of what can hurt the painter nothing is seen in the picture.
  drawing: { chapters: chapters.filter((chapter) => chapter !== 'cautions'), ownWords: true },
  notan: { chapters: ['values'] },
  values: { chapters: ['values'], rules: ['value against colour'] },
  colour: { chapters: ['colour'], rules: ['value against colour'] },
  squint: { chapters: [] },
  mirror: { chapters: [] },
  path: { chapters: ['eye path'] },
  emphasis: { chapters: ['centre of interest'] },
  transfer: { chapters: ['transfer'] },
  palette: { chapters: ['palette', 'cautions'] },
  sittings: { chapters: ['sittings'] },
  record: { chapters: ['record'] },
};

/** More marks than this would hide what they are about. */
const MOST_MARKED = 24;

const ON_BARS: ReadonlySet<string> = new Set([...budgetRules.value, ...budgetRules.colour]);

/**
 * The findings that a view shows, in the order in which they come. Those that are marked in the picture are numbered
 * from 1, so that there is no number in a list that is looked for in vain. Budgets are left to their bars.
 * @param placeIn where the mark of a finding belongs; in the picture unless said
 */
export function findingsFor(
  view: View,
  reading: Reading,
  placeIn: (finding: Finding) => Point | undefined = (finding) => placeOf(finding, reading),
): readonly ShownFinding[] {
  const { findings, subjects } = reading;
  let marked = 0;
  return findings
    .map((finding, index) => ({ finding, subject: subjects.findings[index] ?? `finding:${index}` }))
    .filter(({ finding: { rule } }) => !ON_BARS.has(rule) && isShown(rule, SHOWN[view]))
    .map((each) => {
      const wanted = marked < MOST_MARKED ? placeIn(each.finding) : undefined;
      return wanted === undefined ? each : { ...each, mark: { number: ++marked, wanted } };
    });
}

function isShown(rule: string, shown: Shown): boolean {
  if (shown.rules?.includes(rule) === true) return true;
  const chapter = ruleById(rule)?.chapter;
  return chapter === undefined ? shown.ownWords === true : shown.chapters.includes(chapter);
}

/**
 * At its own place, else at the first object concerned that is seen, else at the focal point for what is said of it.
 */
function placeOf({ at, objects, rule }: Finding, { plan, measures, cells }: Reading): Point | undefined {
  if (at !== undefined) return at;
  for (const index of objects) {
    const layer = measures.areas.layers[plan.coveringOrder.indexOf(index)];
    if (layer === undefined || layer.share <= 0) continue;
    const heart = regionOf(cells, index)?.heart;
    if (heart !== undefined) return heart;
    const [x, y] = layer.visible[0] ?? [];
    if (x !== undefined && y !== undefined) return { x, y };
  }
  return ruleById(rule)?.chapter === 'centre of interest' ? plan.focus?.at : undefined;
}
