import type { ColourRole } from '../../../grammar/index.js';
import { pathMark } from '../marks.js';
import { circlePath, number, polygonPath } from '../path-data.js';
import type { Ink, Mark } from '../scene.js';

/**
 * A sign for a colour role, so that roles are told apart without their colours: a full disc for the dominant, a
 * half one for the complement, a triangle for a discord, a ring for a neutral.
 */
export function roleSign(
  key: string,
  role: ColourRole,
  at: { readonly x: number; readonly y: number },
  radius: number,
  inks: { readonly ink: Ink; readonly ground: Ink; readonly subject?: string },
): readonly Mark[] {
  const { ink, ground, subject } = inks;
  const ring = pathMark(key, circlePath(at, radius), {
    fill: role === 'dominant' ? ink : ground,
    stroke: { ink, weight: 'fine' },
    subject,
  });
  switch (role) {
    case 'dominant':
    case 'neutral':
      return [ring];
    case 'complement':
      return [ring, pathMark(`${key}:half`, halfDisc(at, radius), { fill: ink, subject })];
    case 'discord':
      return [
        pathMark(key, triangle(at, 1.15 * radius), {
          fill: ink,
          stroke: { ink: ground, weight: 'hair' },
          subject,
        }),
      ];
  }
}

function halfDisc({ x, y }: { readonly x: number; readonly y: number }, radius: number): string {
  const r = number(radius);
  return `M${number(x)} ${number(y - radius)}A${r} ${r} 0 0 0 ${number(x)} ${number(y + radius)}Z`;
}

export function triangle({ x, y }: { readonly x: number; readonly y: number }, radius: number): string {
  return polygonPath([
    { x, y: y - radius },
    { x: x + 0.95 * radius, y: y + 0.7 * radius },
    { x: x - 0.95 * radius, y: y + 0.7 * radius },
  ]);
}
