// What the layout asks of a face: how wide words come out, and which letters it holds.

/** The text face upright and slanted, and the display face. */
export const FACE_NAMES = ['text', 'italic', 'display'] as const;
export type FaceName = (typeof FACE_NAMES)[number];

export interface Face {
  /** The width of words set in the face, in thousandths of its size. */
  readonly widthOf: (text: string) => number;
  /** Whether every letter of the text is in the face. */
  readonly holds: (text: string) => boolean;
}

export type Faces = Readonly<Record<FaceName, Face>>;
