import { expect, test } from 'vitest';
import { FACE_NAMES } from './face.ts';
import { fonts } from './fonts.ts';

const { faces, parsed } = await fonts();

test.each(FACE_NAMES)('in the %s face all figures are one width, beside whatever figure', (name) => {
  const digits = [...'0123456789'];
  const pairs = digits.flatMap((a) => digits.map((b) => faces[name].widthOf(`${a}${b}.${b}${a}`)));
  expect(new Set(pairs).size).toBe(1);
});

test.each(FACE_NAMES)(
  'the %s face has the letters of Polish, Czech and Turkish, the money signs and the minus',
  (name) => {
    expect(faces[name].holds('ĄĆĘŁŃÓŚŹŻąćęłńóśźż ČĎĚŇŘŠŤŮŽčďěňřšťůž ĞİŞğış € £ ¥ \u2212')).toBe(true);
  },
);

test.each(FACE_NAMES)('the %s face is under the Open Font License', (name) => {
  expect(parsed[name].getName('license', 'en')).toContain('SIL Open Font License, Version 1.1');
});

test('a line is as wide as its words and the spaces between them', () => {
  const { widthOf } = faces.text;
  expect(widthOf('Winter songs')).toBe(widthOf('Winter ') + widthOf('songs'));
});
