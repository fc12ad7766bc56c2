import { marked, said, t } from '../../grammar/localised.js';
import type { Location } from '../../server/plan/plan.js';
import type { LayerName, Mark, PathMark, Scene, Subject } from '../../server/drawing/scene.js';
import { capitalised } from '../../server/plan/problems.js';

/** Something in the drawing that can be gone to, marked and clicked. */
export interface Item {
  /** Of its subject in the scene. */
  readonly key: string;
  readonly kind: Subject['kind'];
  /** For screen readers: what it is and where it is written. */
  readonly label: string;
  readonly location: Location;
  /** Zero-based lines of its block, both included. */
  readonly lines: { readonly first: number; readonly last: number };
  /** Path data of its outline; empty when it is only drawn as text. */
  readonly outline: readonly string[];
  /** Lines too thin to be hit by a pointer, as opposed to areas. */
  readonly thin: boolean;
}

/** Everything that the marks of a scene stand for, in the order of the text. */
export function itemsOf(scene: Scene): readonly Item[] {
  const marks = new Map<string, { layer: LayerName; mark: Mark }[]>();
  for (const layer of scene.layers) {
    for (const mark of layer.marks) {
      if (mark.subject === undefined) continue;
      const known = marks.get(mark.subject) ?? [];
      known.push({ layer: layer.name, mark });
      marks.set(mark.subject, known);
    }
  }
  return Object.entries(scene.subjects)
    .flatMap(([key, subject]) => {
      const drawn = marks.get(key);
      return drawn === undefined ? [] : [itemOf(key, subject, drawn)];
    })
    .sort((a, b) => a.location.line - b.location.line || a.location.start - b.location.start);
}

type Drawn = readonly { readonly layer: LayerName; readonly mark: Mark }[];

function itemOf(key: string, subject: Subject, drawn: Drawn): Item {
  const { kind, location } = subject;
  const lines = 'lines' in subject ? subject.lines : { first: location.line, last: location.line };
  return {
    key,
    kind,
    label: labelOf(subject, drawn),
    location,
    lines,
    outline: outlineOf(kind, drawn),
    thin: kind === 'lead' || kind === 'horizon' || kind === 'division' || kind === 'focus',
  };
}

/** What the marks say when they are pointed at; the tick of what is wanted repeats its bar. */
function labelOf(subject: Subject, drawn: Drawn): string {
  const { location, from } = subject;
  const line = from ? t('line {0} of {1}', from.line + 1, from.file) : t('line {0}', location.line + 1);
  if (subject.kind === 'finding') return `${severityWord(subject.severity)}: ${subject.message} ${line}`;
  const telling = drawn.filter(({ mark }) => !mark.key.endsWith(':wanted'));
  const tips = [...new Set(telling.flatMap(({ mark }) => mark.tip ?? []))].map((tip) =>
    tip.replace(/\.$/, ''),
  );
  switch (subject.kind) {
    case 'scale':
    case 'budget':
      return `${[capitalised(subject.name), ...(tips.length === 0 ? [] : [tips.join('; ')])].join(': ')}, ${line}`;
    case 'lead':
      return `${tips[0] ?? t('lead {0}', subject.name)}, ${line}`;
    default:
      return `${tips[0] ?? subject.name}, ${line}`;
  }
}

const severityWords = { error: marked('Error'), warning: marked('Warning'), hint: marked('Hint') } as const;

export function severityWord(severity: keyof typeof severityWords): string {
  return said(severityWords[severity]);
}

/**
 * The paths that go round an item on the picture, without the hatching inside an object; a finding has its badge.
 * Empty for what is only written beside the picture.
 */
function outlineOf(kind: Subject['kind'], drawn: Drawn): readonly string[] {
  const paths = drawn.filter(
    (entry): entry is { layer: LayerName; mark: PathMark } =>
      entry.mark.kind === 'path' && (kind === 'finding' || onPicture.has(entry.layer)),
  );
  const filled = paths.filter(({ mark }) => mark.fill !== undefined);
  // Round what is laid over a photograph too, where nothing is filled.
  const isOutline = ({ mark }: { mark: PathMark }) =>
    mark.fill !== undefined || mark.key.endsWith(':outline');
  const chosen = kind === 'object' && filled.length > 0 ? paths.filter(isOutline) : paths;
  // A glaze has the outline of what it lies over.
  return [...new Set(chosen.map(({ mark }) => mark.d))];
}

const onPicture: ReadonlySet<LayerName> = new Set(['picture', 'construction']);

/** Keys of the items whose lines hold the line of the cursor. Findings are marked in the list, not here. */
export function itemsAtLine(items: readonly Item[], line: number): ReadonlySet<string> {
  return new Set(
    items
      .filter(({ kind, lines }) => kind !== 'finding' && lines.first <= line && line <= lines.last)
      .map(({ key }) => key),
  );
}
