import type { BikePicture, ForkShape, SpringCurve, SpringPicture } from '../plan/index.ts';

/** All that a picture says, in one language. */
export interface PictureWords {
  /** BCP 47 tag. */
  readonly tag: string;
  readonly before: string;
  readonly after: string;
  readonly now: string;
  readonly title: string;
  readonly description: string;
  /** A scale: so many pixels of the sheet to a millimetre. */
  readonly scale: (pixels: number) => string;
  readonly spring: {
    readonly title: string;
    readonly description: (picture: SpringPicture) => string;
    readonly travel: string;
    readonly force: string;
    readonly curve: (which: string, curve: SpringCurve) => string;
    readonly sag: (force: number) => string;
    readonly hit: string;
    readonly note: (picture: SpringPicture) => string;
  };
  readonly bike: {
    readonly title: (picture: BikePicture) => string;
    readonly description: (picture: BikePicture) => string;
    /** What stands over each of the two views. */
    readonly views: (picture: BikePicture) => readonly [string, string];
    readonly figure: (
      name: 'headAngle' | 'wheelbase' | 'trail' | 'bottomBracket' | 'reach' | 'stack',
      value: number,
    ) => readonly [name: string, value: string];
  };
  readonly fork: {
    readonly title: string;
    readonly description: (before: ForkShape | null, after: ForkShape) => string;
    readonly figure: (name: 'axleToCrown' | 'travel', value: number) => readonly [name: string, value: string];
    readonly leg: (side: 'left' | 'right', holds: string) => string;
    readonly slot: (slot: string, content: ForkShape['slots'][number]['content']) => string;
    readonly schematic: string;
  };
}
