// How an amount says why it is what it is.
import { words } from './words.ts';

export const why = words({
  about: 'For',
  facts: 'From',
  arithmetic: 'Worked out',
  copy: 'Copy as text',
  copied: 'Copied.',
  notCopied: 'This browser does not let it be copied. Take the text from here.',
  named: '{what}: ',
  sumOf: 'these {count} amounts together = {total}',

  textHead: '{what}: {amount}.',
  textSentence: 'The terms say: “{sentence}”',
  textAbout: 'It is for {about}.',
  textFacts: 'It goes by: {facts}.',
  textArithmetic: 'Worked out: {arithmetic}.',
  textParts: 'It is put together from:',
});
