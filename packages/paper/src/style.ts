// The few sizes, faces and inks of the page family. Sizes and leadings are points.

import type { FaceName } from './face.ts';

/** The inks of the house, as `look.md` names them: text, secondary text and rules, one accent. */
export const INKS = { ebony: '#1d1f21', wire: '#5b646b', plate: '#7a5415' } as const;
export type Ink = keyof typeof INKS;

export interface Style {
  readonly face: FaceName;
  readonly size: number;
  readonly leading: number;
  readonly ink: Ink;
}

export const STYLES = {
  heading: { face: 'display', size: 27, leading: 34, ink: 'ebony' },
  name: { face: 'display', size: 17, leading: 22, ink: 'ebony' },
  total: { face: 'display', size: 17, leading: 24, ink: 'ebony' },
  subject: { face: 'italic', size: 12.5, leading: 17, ink: 'ebony' },
  text: { face: 'text', size: 9.5, leading: 14, ink: 'ebony' },
  label: { face: 'italic', size: 9.5, leading: 14, ink: 'plate' },
  small: { face: 'text', size: 8, leading: 11.5, ink: 'wire' },
  aside: { face: 'italic', size: 8, leading: 11.5, ink: 'wire' },
} as const satisfies Record<string, Style>;
