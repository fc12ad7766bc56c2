import type { Grip } from '../../../server/drawing/scene.js';

/** What tests take hold of: a thing without a frame, and the focal point. */
export const bowl: Grip = {
  key: 'bowl',
  subject: 'object:bowl',
  kind: 'object',
  at: { x: 10, y: 10 },
  name: 'bowl',
};

export const focus: Grip = {
  key: 'focus',
  subject: 'focus',
  kind: 'focus',
  at: { x: 25, y: 11 },
  name: 'focal point',
};
