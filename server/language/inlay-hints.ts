import type { InlayHint, Range } from 'vscode-languageserver-types';
import { nameKey, speaking, t, walk, type Node, type Place } from '../../grammar/index.js';
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
  const hints = speaking(abilities.language, () =>
    hintKinds.filter((kind) => settings[kind]).flatMap((kind) => hintsOf[kind](snapshot, range)),
  );
  return hints
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
            label: t('is {0}', percent(entry.share)),
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
    const told = [
      t('{0} covers {1} of the picture.', object.name, percent(share)),
      ...(hiddenShare > 0 ? [t('{0} of it is hidden.', percent(hiddenShare))] : []),
      ...(offCanvasShare > 0 ? [t('{0} of it lies off the canvas.', percent(offCanvasShare))] : []),
    ];
    return [
      {
        at: object.location,
        label: share > 0 ? percent(share) : t('not seen'),
        tooltip: told.join(' '),
      },
    ];
  });
  const colours = plan.colours.flatMap(({ name, location }, index): readonly Hint[] => {
    const share = measures.colours.colours[index]?.share;
    if (share === undefined || share <= 0) return [];
    return [
      {
        at: location,
        label: percent(share),
        tooltip: t('{0} covers {1} of the picture.', name, percent(share)),
      },
    ];
  });
  return [...objects, ...colours];
}

/** At a colour where no value is stated, the step it comes to. */
function valueHints({ plan }: Snapshot): readonly Hint[] {
  const { steps } = plan.scale;
  const tooltip = (value: number, step: number): string =>
    t(
      'No value is stated, so it is painted as light as its colour is: Munsell value {0}, step {1} of {2}.',
      plainNumber(value, 1),
      plainNumber(step, 1),
      steps,
    );
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
          tooltip: t(
            'The ground has the Munsell value {0}, nearest to step {1} of {2}.',
            plainNumber(toMunsell(ground.colour).value, 1),
            ground.step,
            steps,
          ),
        },
        ...objects,
      ];
}

function stepLabel(step: number): string {
  return t('value {0}', plainNumber(step, 1));
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
  const [across, down] = [length(at.x, canvas), length(at.y, canvas)];
  return {
    at: { line: node.line, start: place.start, end: place.end },
    label: t('{0} across, {1} down', across, down),
    tooltip: t(
      '{0} from the left and {1} from the top of the canvas: {2} of the width and {3} of the height.',
      across,
      down,
      percent(at.x / canvas.width),
      percent(at.y / canvas.height),
    ),
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
    const off = differenceInWords(difference);
    return [
      {
        at,
        label: partsInWords(mixture.parts, plan),
        tooltip: mixture.isEstimate
          ? t('The nearest mixture of the palette as this is painted, estimated to be {0}.', off)
          : t('The nearest mixture of the palette as this is painted, predicted to be {0}.', off),
      },
    ];
  });
}

/** At the title of a sitting or at its day, when what it lays is dry to the touch. */
function dryingHints({ plan, measures: { schedule } }: Snapshot): readonly Hint[] {
  return (schedule?.sittings ?? []).flatMap(({ sitting, dryOn, day, slack }): readonly Hint[] => {
    const { location, dateLocation } = plan.sittings[sitting] ?? {};
    if (location === undefined || day === undefined || dryOn === undefined) return [];
    const told = [
      t('All that is laid in this sitting is dry to the touch after {0}.', daysInWords(dryOn - day)),
      ...(slack !== undefined && slack < 0 ? [t('It comes too late for the due date.')] : []),
      ...(slack !== undefined && slack > 0 ? [t('It can be put off by {0}.', daysInWords(slack))] : []),
    ];
    return [
      {
        at: dateLocation && isOwn(dateLocation) ? dateLocation : location,
        label: t('dry on {0}', dayInWords(dryOn)),
        tooltip: told.join(' '),
      },
    ];
  });
}
