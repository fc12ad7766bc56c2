/**
 * An empty room for pictures just within and just beyond a limit: the diagonal is 100 cm, so that a centimetre is one
 * per cent of it, and the focal point lies on the one crossing of the division.
 */
export const ROOM = `canvas  80 x 60 cm
  ground  N 5/
divide  own
  uprights 60
  levels   45
focus   (60, 45)
`;
