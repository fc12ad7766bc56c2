// Signs of the language by their code units, for what reads a line character by character.
export const TAB = 0x09;
export const SPACE = 0x20;
export const QUOTE = 0x22;
export const HASH = 0x23;
export const PERCENT = 0x25;
export const APOSTROPHE = 0x27;
export const OPEN_BRACKET = 0x28;
export const CLOSE_BRACKET = 0x29;
export const COMMA = 0x2c;
export const DASH = 0x2d;
export const POINT = 0x2e;
export const SLASH = 0x2f;
export const ZERO = 0x30;
export const COLON = 0x3a;
export const BACKSLASH = 0x5c;
export const LOW_LINE = 0x5f;
export const TIMES = 0x78;
