import type { Finding } from '../../findings/finding.js';
import { isOwn, placeHere } from '../../plan/based-on/here.js';
import type { Location, Plan } from '../../plan/plan.js';
import type { Subjects } from './reading.js';
import type { Lines, Subject } from '../scene.js';
import { systemName } from '../captions/words.js';

type Thing = Plan['leads'][number] | Plan['objects'][number];

/** The subject of a thing, and the key that it is wanted under. */
const kept = new WeakMap<Thing, { readonly wanted: string; readonly subject: Subject }>();

/** Everything in the plan that a mark can stand for, under keys that stay while the names stay. */
export function subjectsOf(plan: Plan, findings: readonly Finding[]): Subjects {
  const all: Record<string, Subject> = {};
  const add = (wanted: string, subject: Subject): string => {
    let key = wanted;
    for (let count = 2; key in all; count++) key = `${wanted} #${count}`;
    all[key] = subject;
    return key;
  };
  const here = (location: Location): Pick<Subject, 'location' | 'from'> => ({
    location: placeHere(plan, location),
    ...(location.file === undefined ? {} : { from: { file: location.file, line: location.line } }),
  });
  const linesHere = ({
    location,
    lines,
  }: {
    readonly location: Location;
    readonly lines?: Lines | undefined;
  }) => {
    const place = here(location);
    return { ...place, lines: lines ?? { first: place.location.line, last: place.location.line } };
  };
  const named = (kind: 'object' | 'lead') => (item: Thing) => {
    const known = kept.get(item);
    if (known) return add(known.wanted, known.subject);
    const wanted = `${kind}:${item.key}`;
    const subject = { kind, key: item.key, name: item.name, ...linesHere(item) };
    // Where something of another plan stands in this one may change while it stays the same.
    if (isOwn(item.location)) kept.set(item, { wanted, subject });
    return add(wanted, subject);
  };
  const placed = (
    kind: Exclude<Subject['kind'], 'object' | 'lead' | 'paint' | 'sitting' | 'finding'>,
    key: string,
    name: string,
    location: Location | undefined,
  ) => (location === undefined ? undefined : add(key, { kind, name, ...here(location) }));

  const { canvas, focus, horizon, scale, transferGrid, valueBudget, colourBudget } = plan;
  placed('canvas', 'canvas', 'canvas', canvas.location);
  placed('ground', 'ground', 'ground', canvas.ground.location);
  placed('focus', 'focus', 'focal point', focus?.location);
  placed('horizon', 'horizon', 'horizon', horizon?.location);
  placed('grid', 'grid', 'transfer grid', transferGrid?.location);
  placed('scale', 'scale', 'value scale', scale.location);
  placed('budget', 'budget:value', 'value budget', valueBudget?.location);
  placed('budget', 'budget:colour', 'colour budget', colourBudget?.location);
  return {
    all,
    objects: plan.objects.map(named('object')),
    leads: plan.leads.map(named('lead')),
    divisions: plan.divisions.map(({ system, location }) =>
      placed('division', `division:${system}`, systemName(system), location),
    ),
    paints: (plan.palette?.paints ?? []).map(({ key, name, location }) =>
      add(`paint:${key}`, {
        kind: 'paint',
        key,
        name,
        ...linesHere({ location }),
      }),
    ),
    sittings: plan.sittings.map(({ title, location, lines }) =>
      add(`sitting:${title}`, {
        kind: 'sitting',
        key: title,
        name: title,
        ...linesHere({ location, lines }),
      }),
    ),
    findings: findings.map(({ rule, severity, message, location, from = location, objects }) => {
      const about = objects.map((index) => plan.objects[index]?.key ?? '').join(', ');
      return add(`finding:${rule}${about === '' ? '' : `:${about}`}`, {
        kind: 'finding',
        name: rule,
        severity,
        message,
        ...here(from),
      });
    }),
  };
}
