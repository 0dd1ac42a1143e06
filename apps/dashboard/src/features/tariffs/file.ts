// A tariff as the text of a file, to keep, to send and to read in again.

import { exportTariff, importTariff, type Tariff, type WrittenTariff } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { tariffs as say } from '../../catalogue/tariffs.ts';

const LARGEST = 1_000_000;

/** The text of a file that holds one version of a tariff. */
export function writeFile(tariff: Tariff): string {
  return `${JSON.stringify(exportTariff(tariff), undefined, 2)}\n`;
}

/** A name for the file, from the tariff's own. */
export function fileName({ name, version }: Pick<WrittenTariff, 'name' | 'version'>): string {
  const plain = name
    .toLowerCase()
    .replaceAll(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replaceAll(/^-|-$/g, '');
  return `${plain || 'tariff'}-${version}.json`;
}

/** The tariff in a file's text. Refuses in one sentence, with the path, what is not JSON or not a tariff. */
export function readFile(text: string): OrRefusal<WrittenTariff> {
  if (text.trim() === '') return new Refusal('tariffs/empty-file', say('fileEmpty'));
  if (text.length > LARGEST) return new Refusal('tariffs/file-too-large', say('fileTooLarge'));
  const value = parse(text);
  if (refused(value)) return value;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return new Refusal('tariffs/not-a-tariff', say('notATariff'));
  }
  const tariff = importTariff(value);
  return refused(tariff) ? tariff : tariff.written;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return new Refusal('tariffs/not-json', say('notJson'));
  }
}
