/** How high the picture of the section may be, CSS px: a share of the window, and never less than can be read. */
const DESK_SHARE = 0.5;
const WIDE_SHARE = 0.56;
const LEAST_DESK_HEIGHT = 360;
const TABLET_HEIGHT = 320;
const PHONE_HEIGHT = 280;

export type PictureRoom = {
  readonly windowHeight: number;
  /** Beside a station that needs the room. */
  readonly isBeside: boolean;
  readonly isOneColumn: boolean;
  readonly isOneHand: boolean;
};

export function pictureHeight({ windowHeight, isBeside, isOneColumn, isOneHand }: PictureRoom): number {
  if (isOneHand) return PHONE_HEIGHT;
  if (isOneColumn) return TABLET_HEIGHT;
  return Math.max(LEAST_DESK_HEIGHT, windowHeight * (isBeside ? DESK_SHARE : WIDE_SHARE));
}
