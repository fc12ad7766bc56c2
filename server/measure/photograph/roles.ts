import type { ColourRole } from '../../../grammar/index.js';
import type { Lab } from '../../plan/colour/colour.js';
import { labDifference } from '../../plan/colour/difference.js';
import type { Plan } from '../../plan/plan.js';
import type { Memory } from '../memory.js';
import type { Pixels } from './pixels.js';
import type { RecordFigures } from './record.js';
import type { Target } from './targets.js';

/** A colour that the plan has somewhere in the picture, with its role if it has one. */
export interface RoleColour {
  readonly lab: Lab;
  readonly role?: ColourRole;
}

const ROLES: readonly ColourRole[] = ['dominant', 'complement', 'discord', 'neutral'];
/** Less bare ground than this is not looked for in a photograph. */
const SOME_GROUND = 0.002;

/** The colours that are to be seen, each once; objects of which only a value is known have none. */
export function roleColours(
  { objects, canvas }: Plan,
  shares: readonly number[],
  bareShare: number,
  targets: readonly Target[],
): readonly RoleColour[] {
  const { ground } = canvas;
  const colours = [
    ...objects.flatMap(({ index, colour, painted }): readonly RoleColour[] => {
      if (!colour || !painted || (shares[index] ?? 0) <= 0) return [];
      const target = targets[index];
      const lab = target?.counts === 'value and colour' && target.shown ? target.shown : painted.lab;
      return [{ lab, ...(colour.role ? { role: colour.role } : {}) }];
    }),
    ...(bareShare > SOME_GROUND
      ? [{ lab: ground.colour.lab, ...(ground.role ? { role: ground.role } : {}) }]
      : []),
  ];
  return [...new Map(colours.map((one) => [`${one.role ?? ''} ${one.lab.join(' ')}`, one])).values()];
}

/** What of the picture is nearest in colour (CIEDE2000) to each role that has a colour, shade by shade. */
export function measureRoles(
  { shades }: Pick<Pixels, 'shades'>,
  colours: readonly RoleColour[],
  memory: Memory,
  key: string,
): Pick<RecordFigures, 'roles' | 'noRoleShare'> {
  const inUse = ROLES.filter((role) => colours.some((one) => one.role === role));
  if (inUse.length === 0) return { roles: [], noRoleShare: 1 };
  const inputs = [shades, ...colours.flatMap(({ role, lab }) => [role, ...lab])];
  return memory.recall('roles of pixels', key, inputs, () => {
    const counts = new Map<ColourRole | undefined, number>();
    let whole = 0;
    for (const { lab, count } of shades) {
      const role = nearestRole(lab, colours);
      counts.set(role, (counts.get(role) ?? 0) + count);
      whole += count;
    }
    const share = (role: ColourRole | undefined): number => (counts.get(role) ?? 0) / Math.max(1, whole);
    return { roles: inUse.map((role) => ({ role, share: share(role) })), noRoleShare: share(undefined) };
  });
}

/** The role of the colour that is nearest; of two that are as near the first. */
export function nearestRole(lab: Lab, colours: readonly RoleColour[]): ColourRole | undefined {
  let nearest: RoleColour | undefined;
  let least = Infinity;
  for (const colour of colours) {
    const away = labDifference(lab, colour.lab);
    if (away < least) [nearest, least] = [colour, away];
  }
  return nearest?.role;
}
