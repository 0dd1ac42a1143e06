// Light or dark: as the device has it, until somebody chooses.
import { SCHEMES, type Scheme } from './tokens.ts';

const KEY = 'scheme';

export function recallScheme(): void {
  const chosen = SCHEMES.find((scheme) => scheme === localStorage.getItem(KEY));
  if (chosen) document.documentElement.dataset.scheme = chosen;
}

export function chooseScheme(scheme: Scheme): void {
  localStorage.setItem(KEY, scheme);
  document.documentElement.dataset.scheme = scheme;
}

let printing = false;

/** The scheme in sight; paper is light. */
export function schemeInSight(): Scheme {
  if (printing) return 'light';
  const chosen = document.documentElement.dataset.scheme;
  if (chosen === 'light' || chosen === 'dark') return chosen;
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}

/** Calls back when the scheme in sight may have changed: by choice, by the device, for a printer. */
export function watchScheme(watcher: () => void): () => void {
  const device = matchMedia('(prefers-color-scheme: dark)');
  const choice = new MutationObserver(watcher);
  const print = ({ type }: Event) => {
    printing = type === 'beforeprint';
    watcher();
  };
  choice.observe(document.documentElement, { attributeFilter: ['data-scheme'] });
  device.addEventListener('change', watcher);
  window.addEventListener('beforeprint', print);
  window.addEventListener('afterprint', print);
  return () => {
    choice.disconnect();
    device.removeEventListener('change', watcher);
    window.removeEventListener('beforeprint', print);
    window.removeEventListener('afterprint', print);
  };
}
