import type { StatementKind } from '../../grammar/index.js';

/**
 * Whole statements with places to fill in, for clients that can take snippets. With what stands in the places, each
 * is a statement that reads.
 */
export const snippets: Partial<Readonly<Record<StatementKind, string>>> = {
  mahl: 'mahl 1',
  plan: 'plan "${1:title}"',
  'based on': 'based on "${1:plan.mahl}"',
  concept: 'concept "${1:what the picture is about}"',
  cue: 'cue "${1:what must stay}"',
  avoid: 'avoid "${1:what it must not become}"',
  note: 'note "${1:remark}"',
  canvas: 'canvas ${1:40} x ${2:30} ${3|cm,mm,m,in|}',
  budget: 'budget value ${1:dark 30%, middle 45%, light 25%} within ${2:5%}',
  'colour definition': 'colour ${1:name} ${2:#888888}',
  object: 'object ${1:name}\n\tshape ${2:rectangle (0, 0) to (10, 10)}\n\tvalue ${3:3}',
  turn: 'turn ${1:15} degrees',
  resize: 'resize ${1:80}%',
  repeat: 'repeat ${1:3} every (${2:4}, ${3:0})',
  lead: 'lead ${1:name} from ${2:left edge at 50%} to ${3:focus}',
  paint: 'paint ${1:name} ${2:PB29}',
  film: 'film ${1:0.15} mm',
  tube: 'tube ${1:37} ml',
  sitting: 'sitting "${1:title}" on ${2:2026-12-01}',
  fat: 'fat ${1:10}%',
  task: 'task "${1:what is to be done}"',
  photo: 'photo "${1:photo.jpg}"',
  sketch: 'sketch "${1:sketch.png}"',
  opacity: 'opacity ${1:40}%',
  due: 'due ${1:2026-12-01}',
  away: 'away ${1:2026-12-24} to ${2:2026-12-31}',
  grid: 'grid ${1:6} x ${2:4}',
};
