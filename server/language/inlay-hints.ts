import type { InlayHint, Range } from 'vscode-languageserver-types';
import { nameKey, walk, type Node, type Place } from '../../grammar/index.js';
import { dayInWords, daysInWords } from '../findings/words/days.js';
import { differenceInWords, partsInWords } from '../findings/words/paints.js';
import { length, percent } from '../findings/words/words.js';
import { isOwn } from '../plan/based-on/here.js';
import { squareCount, gridInWords } from '../drawing/transfer/words.js';
import { transferGridOf } from '../measure/transfer/grid.js';
import { rulerFor } from '../measure/transfer/rulers.js';
import { toMunsell } from '../plan/colour/munsell.js';
import type { Location, PlanObject } from '../plan/plan.js';
import { resolvePlace } from '../plan/places.js';
import { Problems, plainNumber } from '../plan/problems.js';
import type { Abilities } from './abilities.js';
import { wantedAndMeasured } from './figures/paragraphs.js';
import { hintKinds, type HintKind, type HintSettings } from './hint-settings.js';
import type { Snapshot } from './snapshot.js';
import { contentOf, styleFor } from './style.js';

/** What is measured beside what is written, in the lines of the range, as far as it is wanted. */
export function inlayHints(
  snapshot: Snapshot,
  range: Range,
  settings: HintSettings,
  abilities: Abilities,
): readonly InlayHint[] {
  const style = styleFor(abilities.hoverMarkdown);
  return hintKinds
    .filter((kind) => settings[kind])
    .flatMap((kind) => hintsOf[kind](snapshot, range))
    .filter(({ at }) => isOwn(at) && range.start.line <= at.line && at.line <= range.end.line)
    .sort((a, b) => a.at.line - b.at.line || a.at.end - b.at.end)
    .map(({ at, label, tooltip }) => ({
      position: { line: at.line, character: at.end },
      label,
      tooltip: contentOf(style, [style.text(tooltip)]),
      paddingLeft: true,
    }));
}

interface Hint {
  /** It stands behind these words. */
  readonly at: Location;
  readonly label: string;
  /** A sentence or two. */
  readonly tooltip: string;
}

const hintsOf: Readonly<Record<HintKind, (snapshot: Snapshot, range: Range) => readonly Hint[]>> = {
  budget: budgetHints,
  visible: visibleHints,
  value: valueHints,
  places: placeHints,
  mixtures: mixtureHints,
  drying: dryingHints,
};

/** At each share of a budget, what is measured. */
function budgetHints({ measures }: Snapshot): readonly Hint[] {
  return [...measures.values.budget, ...measures.colours.budget].flatMap((entry) =>
    entry.location === undefined
      ? []
      : [
          {
            at: entry.location,
            label: `is ${percent(entry.share)}`,
            tooltip: `${entry.name}: ${wantedAndMeasured(entry)}.`,
          },
        ],
  );
}

/** At the name of an object or colour, how much of the picture shows it. */
function visibleHints({ plan, measures }: Snapshot): readonly Hint[] {
  const objects = plan.objects.flatMap((object): readonly Hint[] => {
    const measure = measures.objects[object.index];
    if (measure === undefined || object.waiting || object.outline.rings.length === 0) return [];
    const { share, hiddenShare, offCanvasShare } = measure;
    const off = offCanvasShare > 0 ? ` ${percent(offCanvasShare)} of it lies off the canvas.` : '';
    const hidden = hiddenShare > 0 ? ` ${percent(hiddenShare)} of it is hidden.` : '';
    return [
      {
        at: object.location,
        label: share > 0 ? percent(share) : 'not seen',
        tooltip: `${object.name} covers ${percent(share)} of the picture.${hidden}${off}`,
      },
    ];
  });
  const colours = plan.colours.flatMap(({ name, location }, index): readonly Hint[] => {
    const share = measures.colours.colours[index]?.share;
    if (share === undefined || share <= 0) return [];
    return [
      { at: location, label: percent(share), tooltip: `${name} covers ${percent(share)} of the picture.` },
    ];
  });
  return [...objects, ...colours];
}

/** At a colour where no value is stated, the step it comes to. */
function valueHints({ plan }: Snapshot): readonly Hint[] {
  const { steps } = plan.scale;
  const tooltip = (value: number, step: number): string =>
    `No value is stated, so it is painted as light as its colour is: Munsell value ${plainNumber(value, 1)}, step ${plainNumber(step, 1)} of ${steps}.`;
  const objects = plan.objects.flatMap(({ colour, step, value, stepStated }: PlanObject): readonly Hint[] =>
    colour === undefined || step === undefined || value === undefined || stepStated
      ? []
      : [{ at: colour.location, label: stepLabel(step), tooltip: tooltip(value, step) }],
  );
  const { ground } = plan.canvas;
  return ground.location === undefined
    ? objects
    : [
        {
          at: ground.location,
          label: stepLabel(ground.step),
          tooltip: `The ground has the Munsell value ${plainNumber(toMunsell(ground.colour).value, 1)}, nearest to step ${ground.step} of ${steps}.`,
        },
        ...objects,
      ];
}

function stepLabel(step: number): string {
  return `value ${plainNumber(step, 1)}`;
}

/** At a place in words, how far across and down it lies. */
function placeHints(snapshot: Snapshot, range: Range): readonly Hint[] {
  const hints: Hint[] = [];
  walk(snapshot.tree.nodes, (node) => {
    if (node.line < range.start.line || node.line > range.end.line) return;
    for (const place of placesOf(node)) {
      const hint = inWords(place) ? placeHint(snapshot, node, place) : undefined;
      if (hint !== undefined) hints.push(hint);
    }
  });
  return [...hints, ...gridHints(snapshot)];
}

/** At the spacing of a transfer grid, how many squares that comes to. */
function gridHints({ plan }: Snapshot): readonly Hint[] {
  const stated = plan.transferGrid;
  if (stated === undefined || !('every' in stated.value) || !isOwn(stated.location)) return [];
  const grid = transferGridOf(plan);
  const told = gridInWords(grid, plan.canvas, rulerFor(plan.canvas));
  return [{ at: stated.location, label: squareCount(grid), tooltip: `${told}.` }];
}

function placesOf({ statement }: Node): readonly Place[] {
  switch (statement.kind) {
    case 'focus':
      return [statement.at];
    case 'at':
      return [statement.place];
    case 'shape':
      return 'at' in statement.shape && statement.shape.at !== undefined ? [statement.shape.at] : [];
    default:
      return [];
  }
}

/** Coordinates tell by themselves where they are. */
function inWords({ base, moves }: Place): boolean {
  return base.kind !== 'coordinates' || moves.length > 0;
}

function placeHint({ plan }: Snapshot, node: Node, place: Place): Hint | undefined {
  const { canvas, divisions, focus } = plan;
  const at = resolvePlace(place, node, {
    canvas,
    divisions,
    problems: new Problems(),
    focus: () => focus?.at,
    boxOf: (name) => {
      const key = nameKey(name.text);
      const outline = plan.objects.find((object) => object.key === key)?.outline;
      return outline !== undefined && outline.path.length > 0 ? outline.box : undefined;
    },
  });
  if (at === undefined) return undefined;
  const shares = `${percent(at.x / canvas.width)} of the width and ${percent(at.y / canvas.height)} of the height`;
  return {
    at: { line: node.line, start: place.start, end: place.end },
    label: `${length(at.x, canvas)} across, ${length(at.y, canvas)} down`,
    tooltip: `${length(at.x, canvas)} from the left and ${length(at.y, canvas)} from the top of the canvas: ${shares}.`,
  };
}

/** At the colour of an object, what it is mixed of. */
function mixtureHints({ plan, measures: { palette } }: Snapshot): readonly Hint[] {
  const { mixing } = palette ?? {};
  if (mixing === undefined) return [];
  return plan.objects.flatMap(({ index, colour, valueLocation }): readonly Hint[] => {
    const { mixture, difference } = mixing.swatches[mixing.ofObjects[index] ?? -1] ?? {};
    const at = colour?.location ?? valueLocation;
    if (mixture === undefined || difference === undefined || at === undefined) return [];
    const kind = mixture.isEstimate ? 'estimated' : 'predicted';
    return [
      {
        at,
        label: partsInWords(mixture.parts, plan),
        tooltip: `The nearest mixture of the palette as this is painted, ${kind} to be ${differenceInWords(difference)}.`,
      },
    ];
  });
}

/** At the title of a sitting or at its day, when what it lays is dry to the touch. */
function dryingHints({ plan, measures: { schedule } }: Snapshot): readonly Hint[] {
  return (schedule?.sittings ?? []).flatMap(({ sitting, dryOn, day, slack }): readonly Hint[] => {
    const { location, dateLocation } = plan.sittings[sitting] ?? {};
    if (location === undefined || day === undefined || dryOn === undefined) return [];
    const late =
      slack === undefined
        ? ''
        : slack < 0
          ? ' It comes too late for the due date.'
          : ` It can be put off by ${daysInWords(slack)}.`;
    return [
      {
        at: dateLocation && isOwn(dateLocation) ? dateLocation : location,
        label: `dry on ${dayInWords(dryOn)}`,
        tooltip: `All that is laid in this sitting is dry to the touch after ${daysInWords(dryOn - day)}.${slack === 0 ? '' : late}`,
      },
    ];
  });
}
