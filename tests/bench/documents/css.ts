import { Chance } from './chance.js';

const colours = ['#44525e', 'rgb(159, 176, 187)', '#8a4b32', 'hsl(40, 60%, 63%)', 'var(--accent)', 'inherit'];

/** A style sheet of so many lines, as sites have them: rules of a few declarations, some within media queries. */
export function styleSheetOf(lines: number, seed = 1): string {
  const chance = new Chance(seed);
  const all: string[] = [
    '/* Colours of the house. */',
    ':root {',
    '  --accent: #b5532e;',
    '  --gap: 12px;',
    '}',
    '',
  ];
  let count = 0;
  while (lines - all.length >= 12) all.push(...rule((count += 1), chance), '');
  while (lines - all.length > 0) all.push(`.last-${all.length} { margin: 0 ${chance.whole(1, 30)}px; }`);
  return `${all.slice(0, lines).join('\n')}\n`;
}

function rule(count: number, chance: Chance): readonly string[] {
  if (count % 12 === 0) {
    return [
      `@media (min-width: ${chance.whole(320, 1600)}px) {`,
      `  .panel-${count} .row > a:hover {`,
      `    width: calc(100% - ${chance.whole(1, 9)}rem);`,
      '    display: flex;',
      '  }',
      '}',
    ];
  }
  const declarations = [
    `  color: ${chance.of(colours)};`,
    `  margin: ${chance.whole(0, 24)}px ${chance.whole(0, 24)}px 0 auto;`,
    `  padding: var(--gap) ${chance.between(0, 3).toFixed(2)}em;`,
    `  border: ${chance.whole(1, 4)}px solid ${chance.of(colours)};`,
    `  font: italic ${chance.whole(300, 700)} ${chance.whole(11, 22)}px/1.4 "Source Serif", serif;`,
    `  transition: opacity ${chance.whole(80, 400)}ms ease-in-out;`,
    `  background: linear-gradient(${chance.whole(0, 360)}deg, ${chance.of(colours)}, transparent);`,
  ];
  return [
    `.panel-${count} .title-${chance.whole(1, 99)},`,
    `.panel-${count}:not(.is-open)::before {`,
    ...declarations.slice(0, chance.whole(3, 7)),
    '}',
  ];
}
