/** Names that mean something to every object, or look as if they did. */
export const hostileNames = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '__defineGetter__',
  'valueOf',
  'then',
  'toJSON',
  'length',
] as const;
