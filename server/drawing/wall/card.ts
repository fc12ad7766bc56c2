import { marked, said, type Sentences, speaking, t } from '../../../grammar/index.js';
import type { Comparison } from '../../findings/comparison/compare.js';
import { type Topic, topics } from '../../findings/comparison/change.js';
import type { Finding } from '../../findings/finding.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import { type BarRow, colourRows, valueRows } from '../captions/budgets.js';
import { canvasSize, planTitle } from '../captions/words.js';
import { composeReading, readingOf } from '../compose.js';
import { pathMark } from '../marks.js';
import type { ComparedView, Hex, Mark, Scene } from '../scene.js';
import type { Counts, Strip, StripPart } from './figures.js';
import { countsInWords, keyInWords, stripInWords } from './words.js';

/** A plan as it hangs on the wall of variants: small, with the figures that one chooses by. Plain data. */
export interface WallCard {
  readonly title: string;
  /** `90 × 60 cm` */
  readonly canvas: string;
  /** The picture alone, without lines and words. */
  readonly scene: Scene;
  /** Light and dark, and the parts that the colours play, as they are measured. */
  readonly strips: readonly Strip[];
  /** `middle key`; missing where nothing has a value. */
  readonly key?: string;
  readonly counts: Counts;
  /** Key and counts in words: `high key; 1 hint`. */
  readonly found: string;
}

/**
 * @param errors of the text, which are no findings
 * @param language what its words are told in, besides the picture and the names in it
 */
export function wallCard(
  {
    plan,
    measures,
    findings,
  }: { readonly plan: Plan; readonly measures: Measures; readonly findings: readonly Finding[] },
  view: ComparedView,
  errors: number,
  language?: Sentences,
): WallCard {
  const reading = readingOf(plan, measures, []);
  const standing = findings.filter(({ allowed }) => allowed === undefined);
  const count = (severity: Finding['severity']) =>
    standing.filter((finding) => finding.severity === severity).length;
  const { key } = measures.values;
  const counts = {
    errors: errors + count('error'),
    warnings: count('warning'),
    hints: count('hint'),
  };
  return {
    title: planTitle(plan),
    canvas: canvasSize(plan.canvas),
    scene: small(composeReading(reading, view)),
    strips: speaking(language, () =>
      [strip('value', valueRows(reading)), strip('colour', colourRows(reading))].filter(
        ({ parts }) => parts.length > 0,
      ),
    ),
    ...speaking(language, () => ({
      ...(key === undefined ? {} : { key: keyInWords(key) }),
      counts,
      found: [...(key === undefined ? [] : [keyInWords(key)]), countsInWords(counts)].join('; '),
    })),
  };
}

function strip(of: Strip['of'], rows: readonly BarRow[]): Strip {
  const parts = rows.map(stripPart);
  return { of, parts, words: stripInWords({ parts }) };
}

function stripPart({ name, share, parts, wanted }: BarRow): StripPart {
  return {
    name,
    share,
    hex: parts[0]?.hex ?? NOTHING,
    ...(wanted === undefined ? {} : { target: wanted.target, within: wanted.within }),
  };
}

/** Of a share that nothing of is seen. */
const NOTHING: Hex = '#808080';

/** Only what is painted: at this size lines and words would be in its way, and sixty whole drawings are a lot. */
function small(scene: Scene): Scene {
  return {
    ...scene,
    sheet: scene.picture,
    layers: scene.layers
      .filter(({ name }) => name === 'picture')
      .map((layer) => ({
        ...layer,
        marks: layer.marks.flatMap(plain),
      })),
    subjects: {},
    budgets: [],
    legend: [],
  };
}

/** A path without what it stands for and says. */
function plain(mark: Mark): readonly Mark[] {
  return mark.kind === 'path'
    ? [pathMark(mark.key, mark.d, { fill: mark.fill, fillRule: mark.fillRule })]
    : [];
}

/**
 * What differs from the plan that it builds on: `Differs from “Barn” in objects (3) and values (2)`. Findings follow
 * from the rest.
 */
export function differenceInShort({ changes, earlier }: Comparison): string {
  const base = planTitle(earlier.plan);
  const told = topics.flatMap((topic) => {
    const count = changes.filter((change) => change.topic === topic).length;
    return count === 0 || topic === 'findings' ? [] : [said(countedTopics[topic], count)];
  });
  return told.length === 0
    ? t('The same picture as “{0}”', base)
    : t('Differs from “{0}” in {1}', base, inWords(told));
}

const countedTopics: Readonly<Record<Topic, string>> = {
  canvas: marked('canvas ({0})'),
  division: marked('division ({0})'),
  'centre of interest': marked('centre of interest ({0})'),
  objects: marked('objects ({0})'),
  'eye path': marked('eye path ({0})'),
  values: marked('values ({0})'),
  colours: marked('colours ({0})'),
  palette: marked('palette ({0})'),
  sittings: marked('sittings ({0})'),
  findings: marked('findings ({0})'),
  rules: marked('rules ({0})'),
  words: marked('words ({0})'),
};
