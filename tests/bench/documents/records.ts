import { Chance } from './chance.js';

/** A thing of an inventory, which both the JSON and the YAML document list. */
interface Thing {
  readonly name: string;
  readonly colour: string;
  readonly value: number;
  readonly at: readonly [number, number];
  readonly tags: readonly [string, string];
  readonly note: string;
}

function thing(index: number, chance: Chance): Thing {
  return {
    name: `thing-${index}`,
    colour: chance.of(['slate', 'mist', 'brick', 'straw', 'moss', 'chalk']),
    value: chance.whole(1, 5),
    at: [Number(chance.between(0, 80).toFixed(2)), Number(chance.between(0, 60).toFixed(2))],
    tags: [chance.of(['hard', 'firm', 'soft', 'lost']), chance.of(['fine', 'some', 'little'])],
    note: `Wet into wet, ${chance.whole(2, 40)} strokes at most.`,
  };
}

/** What an inventory has to look like; both services check against it. */
export const inventorySchema = {
  type: 'object',
  required: ['title', 'things'],
  properties: {
    title: { type: 'string' },
    things: {
      type: 'array',
      items: {
        type: 'object',
        required: ['name', 'value'],
        properties: {
          name: { type: 'string', pattern: '^[a-z-]+[0-9]*$' },
          colour: { enum: ['slate', 'mist', 'brick', 'straw', 'moss', 'chalk'] },
          value: { type: 'integer', minimum: 1, maximum: 5 },
          at: { type: 'array', items: { type: 'number' }, minItems: 2, maxItems: 2 },
          tags: { type: 'array', items: { type: 'string' } },
          note: { type: 'string', maxLength: 80 },
        },
      },
    },
  },
} as const;

/** An inventory of so many lines as JSON, one value a line. */
export function jsonOf(lines: number, seed = 1): string {
  const chance = new Chance(seed);
  const things: string[][] = [];
  const each = 9;
  const count = Math.floor((lines - 5) / each);
  for (let index = 0; index < count; index += 1) things.push(jsonThing(thing(index, chance)));
  const last = Array.from(
    { length: lines - 5 - count * each },
    (_, index) => `  "extra${index}": ${chance.whole(1, 99)},`,
  );
  const body = things.flatMap((text, index) => [
    ...text.slice(0, -1),
    `    }${index < count - 1 ? ',' : ''}`,
  ]);
  const all = ['{', '  "title": "Street",', ...last, '  "things": [', ...body, '  ]', '}'];
  return `${all.join('\n')}\n`;
}

function jsonThing({ name, colour, value, at, tags, note }: Thing): string[] {
  return [
    '    {',
    `      "name": ${JSON.stringify(name)},`,
    `      "colour": ${JSON.stringify(colour)},`,
    `      "value": ${value},`,
    `      "at": [${at.join(', ')}],`,
    `      "tags": [${tags.map((tag) => JSON.stringify(tag)).join(', ')}],`,
    '      "visible": true,',
    `      "note": ${JSON.stringify(note)}`,
    '    }',
  ];
}

/** The same inventory as YAML. */
export function yamlOf(lines: number, seed = 1): string {
  const chance = new Chance(seed);
  const all: string[] = ['# Things of the street.', 'title: Street', 'things:'];
  for (let index = 0; lines - all.length >= 8; index += 1) all.push(...yamlThing(thing(index, chance)));
  while (all.length < lines) all.push(`# ${all.length} lines, and no more.`);
  return `${all.join('\n')}\n`;
}

function yamlThing({ name, colour, value, at, tags, note }: Thing): readonly string[] {
  return [
    `  - name: ${name}`,
    `    colour: ${colour}`,
    `    value: ${value}`,
    `    at: [${at.join(', ')}]`,
    '    tags:',
    ...tags.map((tag) => `      - ${tag}`),
    `    note: "${note}"`,
  ];
}
