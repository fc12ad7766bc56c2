import type { Scene } from '../../server/drawing/scene.js';

/** A small scene for tests: a jug on a cloth, a lead to the focal point, and one finding. */
export const stillLife: Scene = {
  view: 'drawing',
  sheet: { x: -4, y: -4, width: 48, height: 44 },
  picture: { x: 0, y: 0, width: 40, height: 30 },
  em: 1,
  title: 'Jug on a cloth',
  description: 'A jug stands on a cloth.',
  layers: [
    { name: 'mount', marks: [{ kind: 'path', key: 'mount', d: 'M-2 -2h44v34h-44z', fill: 'mount' }] },
    {
      name: 'picture',
      marks: [
        { kind: 'path', key: 'ground', d: 'M0 0h40v30h-40z', fill: '#b9a48a' },
        { kind: 'path', key: 'cloth', subject: 'object:cloth', d: 'M0 20h40v10h-40z', fill: '#dddddd' },
        {
          kind: 'path',
          key: 'jug',
          subject: 'object:jug',
          tip: 'Jug: dominant, 12 % of the picture.',
          d: 'M20 8h8v14h-8z',
          fill: '#2f6f73',
        },
        {
          kind: 'path',
          key: 'jug:hatch',
          subject: 'object:jug',
          d: 'M20 9l4 -1',
          stroke: { ink: '#000000', weight: 'hair' },
        },
      ],
    },
    {
      name: 'construction',
      marks: [
        {
          kind: 'path',
          key: 'edge',
          subject: 'lead:edge',
          d: 'M0 22L24 12',
          stroke: { ink: '#a3281c', weight: 'medium' },
        },
      ],
    },
    {
      name: 'findings',
      marks: [
        {
          kind: 'path',
          key: 'finding',
          subject: 'finding:even count',
          d: 'M30 5h2v2h-2z',
          fill: 'warning',
        },
      ],
    },
    {
      name: 'captions',
      marks: [
        {
          kind: 'text',
          key: 'budget',
          subject: 'budget:value',
          text: 'Value',
          x: 0,
          y: 34,
          size: 1,
          anchor: 'start',
          face: 'strong',
          ink: 'ink',
        },
      ],
    },
  ],
  subjects: {
    'object:jug': {
      kind: 'object',
      key: 'jug',
      name: 'jug',
      location: { line: 6, start: 7, end: 10 },
      lines: { first: 6, last: 9 },
    },
    'object:cloth': {
      kind: 'object',
      key: 'cloth',
      name: 'cloth',
      location: { line: 3, start: 7, end: 12 },
      lines: { first: 3, last: 5 },
    },
    'lead:edge': {
      kind: 'lead',
      key: 'edge',
      name: 'edge',
      location: { line: 11, start: 5, end: 9 },
      lines: { first: 11, last: 11 },
    },
    'budget:value': { kind: 'budget', name: 'value budget', location: { line: 1, start: 0, end: 12 } },
    'finding:even count': {
      kind: 'finding',
      name: 'even count',
      severity: 'warning',
      message: 'There are two objects.',
      location: { line: 6, start: 7, end: 10 },
    },
    focus: { kind: 'focus', name: 'focal point', location: { line: 2, start: 0, end: 5 } },
  },
  budgets: [],
  legend: [],
};
