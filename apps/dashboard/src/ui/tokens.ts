// The colours of the inside of a piano, in light and in dark; tokens.css is written from this table, and a test holds
// every pair that carries text or meaning to WCAG 2.2.

export const SCHEMES = ['light', 'dark'] as const;
export type Scheme = (typeof SCHEMES)[number];

export const colours = {
  /** The page. */
  ivory: { light: '#fcfbf7', dark: '#16181a' },
  /** A key that is pressed or pointed at. */
  worn: { light: '#f1eee4', dark: '#22262a' },
  /** Text, and marks that are filled. */
  ebony: { light: '#1d1f21', dark: '#ece8df' },
  /** The cast frame: links, the current thing, the primary action. */
  plate: { light: '#7a5415', dark: '#d9b36a' },
  /** Hammer felt: overdue, refused, destructive. */
  feltRed: { light: '#9b2730', dark: '#f08a8f' },
  /** Action cloth: paid, done. */
  feltGreen: { light: '#22624a', dark: '#7cc7a3' },
  /** Secondary text, axes, outlines of controls. */
  wire: { light: '#5b646b', dark: '#a3adb5' },
  /** Stave lines and rules: they divide, and carry no meaning of their own. */
  hair: { light: '#c9c4b4', dark: '#454b51' },
} as const satisfies Record<string, Record<Scheme, string>>;

export type Colour = keyof typeof colours;

/** Who stands on what, and the least contrast that it needs: 4.5 for text, 3 for marks (WCAG 2.2, 1.4.3 and 1.4.11). */
export const pairs: readonly { readonly front: Colour; readonly back: Colour; readonly least: number }[] = [
  ...on('ivory', 4.5, ['ebony', 'plate', 'feltRed', 'feltGreen', 'wire']),
  ...on('worn', 4.5, ['ebony', 'plate', 'feltRed', 'feltGreen', 'wire']),
  ...on('plate', 4.5, ['ivory']),
  ...on('feltRed', 4.5, ['ivory']),
  ...on('ebony', 4.5, ['ivory']),
  ...on('ebony', 3, ['ivory', 'worn']),
];

function on(back: Colour, least: number, fronts: readonly Colour[]) {
  return fronts.map((front) => ({ front, back, least }));
}

/** The text of tokens.css: one line a colour, and the manual switch. */
export function tokensCss(): string {
  const lines = Object.entries(colours).map(
    ([name, { light, dark }]) => `  --${dashed(name)}: light-dark(${light}, ${dark});`,
  );
  return [
    '/* Written from tokens.ts, and held to it by a test. */',
    ':root {',
    '  color-scheme: light dark;',
    ...lines,
    '}',
    ...SCHEMES.flatMap((scheme) => [`:root[data-scheme="${scheme}"] {`, `  color-scheme: ${scheme};`, '}']),
    '@media print {',
    '  :root:root {',
    '    color-scheme: light;',
    '  }',
    '}',
    '',
  ].join('\n');
}

function dashed(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
